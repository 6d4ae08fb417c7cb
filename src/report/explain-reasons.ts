import type { Scenario } from '../scenario/scenario.ts';

/** What in this scenario can make an undisturbed run differ from its prediction, in clauses. */
export function reasonsToDiffer({ stations }: Scenario): string[] {
  const sorting = stations.filter((at) => at.does === 'gauge' && at.offLimits !== 'pass');
  const benches = stations.filter((at) => at.does === 'rework');
  const scrapping = stations.filter((at) => 'reader' in at && at.reader?.unread.scraps);
  return [
    ...sorting.map(
      ({ name }) => `"${name}" takes parts out, and later stations see only what it lets through`,
    ),
    ...benches.map(({ name }) => `"${name}" alters parts, which come to other stations again`),
    ...scrapping.map(({ name }) => `"${name}" scraps parts by their marks, not by their dimensions`),
  ];
}
