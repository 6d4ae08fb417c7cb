import { z } from 'zod';
import type { Law } from '../../kernel/distributions/index.ts';
import { anyShare, anyShareButNone, entry, kinds, length, measured, share } from '../fields.ts';
import { type Dimension, nameOf, type Quantity } from '../units.ts';

/** How large a disturbance is, drawn anew each time it comes. */
export interface Size {
  readonly law: Law;
  readonly dimension: Dimension;
}

const bounded = ['constant', 'uniform', 'triangular', 'empirical'] as const;

const law = <Name extends string>(distribution: Name) => ({ distribution: z.literal(distribution) });

/** The law of numbers out of one of quantities, which must all be of one dimension. */
function lawOf(given: { readonly distribution: string }, context: z.RefinementCtx): Size {
  const dimensions = new Set<Dimension>();
  const bare = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(bare);
    if (typeof value !== 'object' || value === null) return value;
    dimensions.add((value as Quantity).dimension);
    return (value as Quantity).value;
  };
  const law = Object.fromEntries(Object.entries(given).map(([key, value]) => [key, bare(value)]));
  const [dimension, other] = dimensions;
  if (other !== undefined) {
    const message = `${nameOf(dimension!)} and ${nameOf(other)} cannot be of one distribution`;
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  }
  return { law: law as Law, dimension: dimension! };
}

const spreading = (quantity: z.ZodType<Quantity>) =>
  [
    entry({ ...law('constant'), value: quantity }),
    entry({ ...law('uniform'), low: quantity, high: quantity }).refine(
      ({ low, high }) => low.value <= high.value,
      {
        error: '"low" lies above "high"',
      },
    ),
    entry({ ...law('triangular'), low: quantity, mode: quantity, high: quantity }).refine(
      ({ low, mode, high }) => low.value <= mode.value && mode.value <= high.value,
      { error: 'expected low <= mode <= high' },
    ),
    entry({ ...law('empirical'), values: z.array(quantity, { error: 'expected a list' }).min(1) }),
  ] as const;

const constant = (quantity: z.ZodType<Quantity>) =>
  quantity.transform(
    ({ value, dimension }): Size => ({ law: { distribution: 'constant', value }, dimension }),
  );

/** A size without bounds: what is added to something. */
const shiftOf = (quantity: z.ZodType<Quantity>) =>
  z.union([
    kinds(
      'distribution',
      [...bounded, 'normal'],
      [
        ...spreading(quantity),
        entry({ ...law('normal'), mean: quantity, sd: quantity }).refine(({ sd }) => sd.value >= 0, {
          error: '"sd" must not be negative',
        }),
      ],
    ).transform(lawOf),
    constant(quantity),
  ]);

/** A size within bounds, which no normal law keeps. */
const boundedBy = (quantity: z.ZodType<number>) => {
  const of = quantity.transform((value): Quantity => ({ value, dimension: 'share' }));
  return z
    .union([kinds('distribution', bounded, spreading(of)).transform(lawOf), constant(of)])
    .transform(({ law }) => law);
};

/** A change of a forming setting. */
export const changeOfSetting = shiftOf(measured);
/** A change of a length. */
export const changeOfLength = shiftOf(
  length.transform((value): Quantity => ({ value, dimension: 'length' })),
).transform(({ law }) => law);
/** From nothing to all. */
export const shareThere = boundedBy(share);
/** A share of what is usual, which may be more than all of it. */
export const shareOfUsual = boundedBy(anyShare);
/** The same, but never nothing. */
export const someOfUsual = boundedBy(anyShareButNone);
