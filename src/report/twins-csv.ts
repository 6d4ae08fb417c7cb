import { TWIN_MEASURES } from '../experiment/twin-measures.ts';
import type { Twins } from '../experiment/twins.ts';
import { csvText } from './csv.ts';

/** One row a policy and seed: the run against its twin, in keyed units, with every digit; empty where there is no value. */
export function twinsCsv({ runs }: Twins): string {
  const keys = TWIN_MEASURES.map(({ key }) => key);
  return csvText(
    ['policy', 'seed', ...keys, 'disturbed', 'answered'],
    runs.map(({ policy, seed, values, disturbed, answered }) => [
      ...[policy, seed],
      ...keys.map((key) => values[key]),
      ...[disturbed, answered],
    ]),
  );
}
