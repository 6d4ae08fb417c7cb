import type { Measure, MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { type BesideBest, besideBest } from '../statistics/comparing/best.ts';

/** One policy beside the best of the others. */
export interface BestRow extends BesideBest {
  readonly policy: string;
}

/**
 * Each policy beside the best of the others in one measure, by the seeds under which all of them that have values give one.
 * Empty where fewer than two policies, or fewer than two such seeds, are left.
 * @param runs by policy, in the order of the seeds, which are the same for all
 */
export function bestOf(
  runs: ReadonlyMap<string, readonly Outcome[]>,
  { key, better }: Measure & { readonly key: MeasureKey },
  level: number,
): BestRow[] {
  const values = [...runs].map(([policy, own]) => ({
    policy,
    own: own.map(({ measures }) => measures[key]),
  }));
  const judged = values.filter(({ own }) => own.some((value) => value !== null));
  const common =
    judged[0]?.own.flatMap((_, i) => (judged.some(({ own }) => own[i] === null) ? [] : [i])) ?? [];
  if (judged.length < 2 || common.length < 2) return [];
  const rows = besideBest(
    judged.map(({ own }) => common.map((i) => own[i]!)),
    level,
    better,
  );
  return rows.map((row, i) => ({ policy: judged[i]!.policy, ...row }));
}
