import { type DesignKind, designOf } from '../../../src/experiment/varied/design.ts';
import type { Factor } from '../../../src/experiment/varied/factor.ts';
import { levelOf } from '../../../src/experiment/varied/factor.ts';
import { planVaried, type VariedRun } from '../../../src/experiment/varied/plan-varied.ts';
import { type Varied, varied } from '../../../src/experiment/varied/varied.ts';
import type { MeasureKey } from '../../../src/line/measures.ts';
import { outcome } from '../../report/fake.ts';

export const listed = (name: string, values: readonly (string | number)[]): Factor => ({
  at: `stations/${name}`,
  name,
  levels: values.map((is) => ({ words: String(is), is })),
  range: null,
});

export function ranged(name: string, from: number, to: number, whole = false): Factor {
  const range = { from, to, unit: '', whole };
  return { at: `stations/${name}`, name, levels: [levelOf(from, range), levelOf(to, range)], range };
}

interface Made {
  readonly varied: Varied;
  readonly runs: readonly VariedRun[];
}

/** An experiment whose runs give what is said of the values there and the seed; null is no value. */
export function madeUp(
  kind: DesignKind,
  factors: readonly Factor[],
  { count = 0, seeds = 3 }: { count?: number; seeds?: number },
  gives: (values: readonly number[], seed: number) => number | null,
  key: MeasureKey = 'throughput_per_h',
): Made {
  const design = designOf(kind, factors, count);
  const runs = planVaried(factors, design, seeds, 'carry on').map(({ point, task: { policy, seed } }) => {
    const values = design.points[point]!.map(({ is }, i) =>
      typeof is === 'number' ? is : factors[i]!.levels.findIndex((level) => level.is === is),
    );
    const value = gives(values, seed);
    return { point, outcome: outcome(policy, seed, value === null ? {} : { [key]: value }) };
  });
  return { varied: varied({ factors, design, policy: 'carry on', key }, runs), runs };
}
