import type { Question } from '../../../src/experiment/sizing/question.ts';
import type { SizingSettings } from '../../../src/experiment/sizing/sized.ts';
import type { Target } from '../../../src/experiment/sizing/target.ts';
import type { Task } from '../../../src/experiment/worker.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import type { SizeSpec } from '../../../src/scenario/sizings.ts';
import { outcome } from '../../report/fake.ts';
import { normals } from '../../statistics/normals.ts';

export const size = (name: string, count: number, cost: number): SizeSpec => ({
  ...{ name, at: [`stations/${name}/buffer`], least: 1, step: 1, count, unit: '', cost },
});

export const throughput = (value: number, worth: number): Target => ({
  ...{
    key: 'throughput_per_h',
    name: 'throughput',
    meaning: 'good per hour',
    better: 'higher',
    value,
    worth,
  },
  shown: { unit: 'good /h', factor: 1 },
  of: ({ measures }) => measures.throughput_per_h,
});

/** Two buffers and a crew that each help the less the more there is of it. */
export const question: Question = {
  ...{ name: 'made up', policy: 'carry on', money: 'money', sure: 0.95 },
  sizes: [size('a', 8, 2), size('b', 8, 3), size('c', 3, 10)],
  targets: [throughput(80, 2)],
};

/** The mean of the made-up line. */
export const meanAt = (values: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + [40, 36, 30][i]! * (1 - 1 / (1 + value)), 0);

export const settings: SizingSettings = {
  ...{ whole: false, first: 10, points: 150, atMost: 100_000 },
  inTime: () => true,
};

/** Runs of the made-up line: luck that all sizes of a seed share, and luck of their own. */
export function luck(experiment: number, mean = meanAt) {
  const shared = new Map<number, number>();
  const normal = normals(1000 + experiment);
  return async (tasks: readonly Task[]): Promise<Outcome[]> =>
    tasks.map(({ policy, seed, variant }) => {
      if (!shared.has(seed)) shared.set(seed, normal());
      const values = variant!.changes!.map(({ is }) => Number(is));
      return outcome(policy, seed, {
        throughput_per_h: mean(values) + 3 * shared.get(seed)! + 1.5 * normal(),
      });
    });
}
