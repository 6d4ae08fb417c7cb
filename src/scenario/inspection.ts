import { z } from 'zod';
import { aqlsNear, isAql, SMALLEST_LOT } from '../standards/iso-2859.ts';
import { count, entry, name, quantityPattern, share } from './fields.ts';
import { MOST_COUNTED } from './limits.ts';
import { readQuantity, unitsOf } from './units.ts';

/** Which parts a station gauges. */
export type Inspection =
  /** One part in so many. */
  | { readonly by: 'count'; readonly every: number }
  /** The next part after each period of the clock, s. */
  | { readonly by: 'clock'; readonly every: number }
  /** The first parts of each delivery of the material. */
  | { readonly by: 'delivery'; readonly first: number }
  /** A sample of each lot, by ISO 2859-1; `aql` is a share. */
  | { readonly by: 'plan'; readonly lot: number; readonly aql: number; readonly rejected: string };

const EVERY = `expected a whole number of parts from 1 to ${MOST_COUNTED}, such as 12, or a time with its unit (${unitsOf('time').join(', ')}), such as 10 min`;

const period = z.string().meta({ pattern: quantityPattern('time') });

const error = ({ input }: { readonly input?: unknown }) => `"${String(input)}": ${EVERY}`;

/** One part in so many, or the next part after so much time. */
export const every = z
  .union([z.int({ error }).min(1, { error }).max(MOST_COUNTED, { error }), period], { error })
  .transform((given, context): Inspection => {
    if (typeof given === 'number') return { by: 'count', every: given };
    const read = readQuantity(given);
    if (read?.dimension === 'time' && read.value > 0) return { by: 'clock', every: read.value };
    context.addIssue({ code: 'custom', message: `"${given}": ${EVERY}` });
    return z.NEVER;
  });

const aql = share.superRefine((given, context) => {
  if (isAql(given)) return;
  const near = aqlsNear(given).map((percent) => `${percent} %`);
  context.addIssue({
    code: 'custom',
    message: `ISO 2859-1 has no plans for this AQL; the nearest it has: ${near.join(' and ')}`,
  });
});

export const acceptance = entry({
  lot: count(SMALLEST_LOT).describe('parts in a lot; the station takes them together'),
  aql: aql.describe('acceptance quality limit, one of those of the standard up to 10 %'),
  rejected: name.describe(
    'a lot that is not accepted: screen gauges the rest of it; scrap, or a rework station, takes all of it',
  ),
});

interface Given {
  readonly every?: Inspection | undefined;
  readonly firstOfLot?: number | undefined;
  readonly acceptance?: z.output<typeof acceptance> | undefined;
}

/** The one way of choosing that is given; undefined when none or several are. */
export function inspectionOf({ every, firstOfLot, acceptance }: Given): Inspection | undefined {
  const given: Inspection[] = [
    ...(every ? [every] : []),
    ...(firstOfLot === undefined ? [] : [{ by: 'delivery', first: firstOfLot } as const]),
    ...(acceptance ? [{ by: 'plan', ...acceptance } as const] : []),
  ];
  return given.length === 1 ? given[0] : undefined;
}
