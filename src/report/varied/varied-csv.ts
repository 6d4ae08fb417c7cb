import type { Design } from '../../experiment/varied/design.ts';
import type { Factor } from '../../experiment/varied/factor.ts';
import type { VariedRun } from '../../experiment/varied/plan-varied.ts';
import { MEASURES } from '../../line/measures.ts';
import { csvText } from '../csv.ts';

/** One row a run: the number of its setting, the values there as they were given, the policy, the seed and all measures in keyed units, with every digit. */
export function variedCsv(
  factors: readonly Factor[],
  { points }: Design,
  runs: readonly VariedRun[],
): string {
  const keys = MEASURES.map(({ key }) => key);
  const places = factors.flatMap(({ at }, i) => (at === null ? [] : [{ at, i }]));
  return csvText(
    ['setting', ...places.map(({ at }) => at), 'policy', 'seed', ...keys],
    runs.map(({ point, outcome: { policy, seed, measures } }) => [
      ...[point + 1, ...places.map(({ i }) => cellOf(points[point]![i]!))],
      ...[policy, seed, ...keys.map((key) => measures[key])],
    ]),
  );
}

const cellOf = ({ is, words }: Design['points'][number][number]) => (typeof is === 'number' ? is : words);
