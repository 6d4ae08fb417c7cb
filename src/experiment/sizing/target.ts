import { MEASURES, type Measure } from '../../line/measures.ts';
import type { Outcome } from '../../line/outcome.ts';
import { suggestion } from '../../scenario/nearest.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { TargetSpec } from '../../scenario/sizings.ts';
import { readQuantity } from '../../scenario/units.ts';
import type { Better } from '../../statistics/comparing/better.ts';

/** What the mean of a measure must come to. */
export interface Target {
  /** Of the measure, ending in its unit where it has one. */
  readonly key: string;
  readonly name: string;
  readonly meaning: string;
  readonly shown: Measure['shown'];
  /** `higher` where the mean must reach the value, `lower` where it must not exceed it. */
  readonly better: Better;
  /** In the keyed unit, like `worth`. */
  readonly value: number;
  /** Meeting the target by less than this may be taken for missing it. */
  readonly worth: number;
  /** Null where the run gives no value. */
  readonly of: (outcome: Outcome) => number | null;
}

type Measured = Pick<Target, 'key' | 'name' | 'meaning' | 'shown' | 'of'>;

const FILL_RATE = 'fill rate';
/** Of the target, where a sizing does not say what is worth having. */
const WORTH = 0.01;

function fillRate(stock: string | undefined, { stocks }: Scenario): Measured {
  const known = stocks.filter(({ unlimited }) => !unlimited).map(({ name }) => name);
  if (stock === undefined)
    throw new RangeError(
      known.length > 0
        ? `"${FILL_RATE}" is that of a stock; name it, such as "stock: ${known[0]}"`
        : `"${FILL_RATE}" is that of a stock that can run out, and this line has none`,
    );
  if (!known.includes(stock))
    throw new RangeError(`"${stock}" is no stock that can run out${suggestion(stock, known)}`);
  return {
    key: 'fill_rate',
    name: `${FILL_RATE} of ${stock}`,
    meaning: 'pieces that were on hand when they were asked for / pieces asked for',
    shown: { unit: '%', factor: 100 },
    of: (outcome) => outcome.stocks[stock]?.fill_rate ?? null,
  };
}

function measured({ measure, stock }: TargetSpec, scenario: Scenario): Measured {
  if (measure === FILL_RATE) return fillRate(stock, scenario);
  const found = MEASURES.find(({ key, name }) => key === measure || name === measure);
  if (!found) {
    const known = [...MEASURES.map(({ name }) => name), FILL_RATE];
    throw new RangeError(`"${measure}" is no measure${suggestion(measure, known)}`);
  }
  if (stock !== undefined)
    throw new RangeError(`"stock" belongs to "${FILL_RATE}"; "${measure}" is of the whole line`);
  const { key, name, meaning, shown } = found;
  return { key, name, meaning, shown, of: ({ measures }) => measures[key] };
}

/** A value as a target writes it, in the unit of the measure's key. */
function keyed(written: string, { key, name, shown }: Measured): number {
  const read = readQuantity(written);
  const plain = Number(written);
  const [of, expected] = key.endsWith('_per_h')
    ? ([read?.dimension === 'rate' ? read.value * 3600 : undefined, 'a rate, such as 480 /h'] as const)
    : key.endsWith('_s')
      ? ([read?.dimension === 'time' ? read.value : undefined, 'a time, such as 30 min'] as const)
      : shown.unit === '%'
        ? ([read?.dimension === 'share' ? read.value : undefined, 'a share, such as 95 %'] as const)
        : ([Number.isFinite(plain) ? plain : undefined, 'a number without a unit, such as 12'] as const);
  if (of === undefined || of < 0) throw new RangeError(`"${written}" for ${name}: expected ${expected}`);
  return of;
}

/** @throws RangeError in words */
export function targetOf(spec: TargetSpec, scenario: Scenario): Target {
  const found = measured(spec, scenario);
  const value = keyed((spec.atLeast ?? spec.atMost)!, found);
  const worth = spec.worth === undefined ? WORTH * value : keyed(spec.worth, found);
  if (!(worth > 0))
    throw new RangeError(`${found.name}: expected "worth", what it must be met by to count, above 0`);
  return { ...found, better: spec.atLeast === undefined ? 'lower' : 'higher', value, worth };
}

/** In the middle between the target and the target met by what is worth having. */
export const middleOf = ({ value, worth, better }: Target): number =>
  value + ((better === 'higher' ? 1 : -1) * worth) / 2;
