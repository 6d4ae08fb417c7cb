import { mean } from 'simple-statistics';
import { chanceByLuck } from '../../statistics/designs/beyond-luck.ts';
import { elementaryEffects, type Screened } from '../../statistics/designs/elementary-effects.ts';
import { levelEffects } from '../../statistics/designs/level-effects.ts';
import { linearEffects } from '../../statistics/designs/linear-effects.ts';
import { twoLevelEffects } from '../../statistics/designs/two-level-effects.ts';
import type { Sign } from '../../statistics/designs/two-level-fraction.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { LEVEL } from '../comparison.ts';
import { type Design, pathsOf } from './design.ts';
import type { Factor } from './factor.ts';

/** What one factor does to the measure, or two together. */
export interface FactorEffect {
  /** Factors by number from 0. */
  readonly factors: readonly number[];
  /** The level of each that the effect is of; null for the effect from the first to the last value. */
  readonly levels: readonly number[] | null;
  /** Effects that this design cannot tell from it, those with sign -1 taken off. */
  readonly mixedWith: readonly { readonly factors: readonly number[]; readonly sign: Sign }[];
  readonly effect: Estimate;
}

/** What one factor does here and there, as changes of it alone show. */
interface ScreenedFactor extends Screened {
  /**
   * Whether it surely does something: changes as large would come of luck alone in less than 1 - LEVEL of experiments, all factors together
   * (Bonferroni). Null where one seed a path does not tell luck.
   */
  readonly matters: boolean | null;
}

/** What factors do to the measure. */
export type Effects =
  /** Some run gives no value. */
  | { readonly kind: 'none' }
  /** From the low to the high of two values. */
  | { readonly kind: 'two values'; readonly rows: readonly FactorEffect[] }
  /** Of each level against the mean over all points. */
  | { readonly kind: 'levels'; readonly rows: readonly FactorEffect[] }
  /** From one end to the other, as the plane through all points has it. */
  | { readonly kind: 'linear'; readonly rows: readonly FactorEffect[]; readonly explained: number | null }
  | { readonly kind: 'screened'; readonly rows: readonly ScreenedFactor[] };

type Values = readonly (readonly number[])[];

function ofTwoValues(points: readonly (readonly Sign[])[], values: Values): Effects {
  const rows = twoLevelEffects(points, values, LEVEL).map((own) => ({ ...own, levels: null }));
  return { kind: 'two values', rows };
}

function ofLevels(factors: readonly Factor[], { coordinates }: Design, values: Values): Effects {
  const counts = factors.map(({ levels }) => levels.length);
  const total = counts.reduce((sum, n) => sum + n, 0);
  const pairs = (total ** 2 - counts.reduce((sum, n) => sum + n ** 2, 0)) / 2;
  const found = levelEffects(coordinates, values, LEVEL, total + pairs);
  const rows = found.map(({ at, effect }) => ({
    factors: at.map(({ factor }) => factor),
    levels: at.map(({ level }) => level),
    ...{ mixedWith: [], effect },
  }));
  return { kind: 'levels', rows };
}

function ofPlane(factors: readonly Factor[], { coordinates }: Design, values: Values): Effects {
  const { effects, explained } = linearEffects(coordinates, values, LEVEL, factors.length);
  const rows = effects.map((effect, i) => ({ factors: [i], levels: null, mixedWith: [], effect }));
  return { kind: 'linear', rows, explained };
}

function ofPaths(factors: readonly Factor[], design: Design, values: Values): Effects {
  const ways = pathsOf(design);
  const byPath = ways.map((_, path) => values.slice(path * design.perPath, (path + 1) * design.perPath));
  const means = byPath.map((points) => points.map((own) => mean([...own])));
  const rows = elementaryEffects(ways, means, LEVEL).map((own, factor) => {
    const changes = ways.map(({ order, points }, path) => {
      const step = order.indexOf(factor);
      const moved = points[step + 1]![factor]! - points[step]![factor]!;
      const [before, after] = [byPath[path]![step]!, byPath[path]![step + 1]!];
      return before.map((value, seed) => (after[seed]! - value) / moved);
    });
    const chance = chanceByLuck(changes);
    return { ...own, matters: chance === null ? null : chance < (1 - LEVEL) / factors.length };
  });
  return { kind: 'screened', rows };
}

/** Below this share of the largest value there is only what rounding leaves. */
const ROUNDING = 1e-9;

function withoutRounding(effect: Estimate, largest: number): Estimate {
  const kept = (x: number) => (Math.abs(x) <= ROUNDING * largest ? 0 : x);
  const { value, lower, upper } = effect;
  return {
    ...effect,
    ...{
      value: kept(value),
      lower: lower === null ? null : kept(lower),
      upper: upper === null ? null : kept(upper),
    },
  };
}

function found(factors: readonly Factor[], design: Design, values: Values): Effects {
  if (design.kind === 'screen') return ofPaths(factors, design, values);
  if (design.kind === 'latin') return ofPlane(factors, design, values);
  if (design.fraction !== null) return ofTwoValues(design.fraction.points, values);
  if (factors.some(({ levels }) => levels.length > 2)) return ofLevels(factors, design, values);
  const signs = design.coordinates.map((row) => row.map((level): Sign => (level === 0 ? -1 : 1)));
  return ofTwoValues(signs, values);
}

/** @param values by point and seed, of every run */
export function effectsOf(factors: readonly Factor[], design: Design, values: Values): Effects {
  const effects = found(factors, design, values);
  if (effects.kind === 'screened' || effects.kind === 'none') return effects;
  const largest = values.reduce((most, own) => own.reduce((top, x) => Math.max(top, Math.abs(x)), most), 0);
  const rows = effects.rows.map((row) => ({ ...row, effect: withoutRounding(row.effect, largest) }));
  return { ...effects, rows };
}
