import type { Finished } from '../../experiment/failed-run.ts';
import type { Sized } from '../../experiment/sizing/sized.ts';
import { MEASURES } from '../../line/measures.ts';
import { csvText } from '../csv.ts';

/** One row a configuration, in the order of cost; means in keyed units with every digit, empty where there is no value. */
export function sizedCsv({ sizes, targets, configurations, chosen }: Sized): string {
  const columns = targets.flatMap(({ key }, i) => {
    const name = targets.findIndex((one) => one.key === key) === i ? key : `${key}_${i + 1}`;
    return [`mean_${name}`, `lower_${name}`, `upper_${name}`];
  });
  return csvText(
    ['cost', ...sizes.map(({ name }) => name), ...columns, 'check', 'check_runs', 'cheapest_of_its_level', 'chosen'], // biome-ignore format: one line reads better
    configurations.map((one) => [
      ...[one.cost, ...one.values],
      ...one.means.flatMap((mean) => [mean?.value, mean?.lower, mean?.upper]),
      ...[one.word, one.checkRuns, one.frontier ? 'yes' : 'no', one === chosen ? 'yes' : 'no'],
    ]),
  );
}

/** One row a run that had finished: what stood at which place, the seed and the measures. */
export function sizedRunsCsv(finished: readonly Finished[]): string {
  const keys = MEASURES.map(({ key }) => key);
  const places = finished[0]?.task.variant?.changes?.map(({ at }) => at) ?? [];
  return csvText(
    [...places, 'policy', 'seed', ...keys],
    finished.map(({ task: { variant }, outcome: { policy, seed, measures } }) => [
      ...(variant?.changes ?? []).map(({ is }) => String(is)),
      ...[policy, seed],
      ...keys.map((key) => measures[key]),
    ]),
  );
}
