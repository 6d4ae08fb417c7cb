import type { CrossedRun } from '../../experiment/plan-crossed.ts';
import { MEASURES } from '../../line/measures.ts';
import { csvText } from '../csv.ts';

/** One row a case, severity, policy and seed, in keyed units, with every digit; empty where there is no value. */
export function crossedCsv(runs: readonly CrossedRun[]): string {
  const keys = MEASURES.map(({ key }) => key);
  return csvText(
    ['case', 'severity', 'policy', 'seed', ...keys],
    runs.map(({ case: of, severity, outcome: { policy, seed, measures } }) => [
      ...[of, severity, policy, seed],
      ...keys.map((key) => measures[key]),
    ]),
  );
}
