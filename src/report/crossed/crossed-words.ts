import { LEVEL } from '../../experiment/comparison.ts';
import type { Cell, Crossed, CrossedCase } from '../../experiment/crossed.ts';
import { percentLevel } from '../cells.ts';
import { decimalsFor, fixed } from '../format.ts';
import { counted, listed } from '../words.ts';

/** `throughput, good /h`. */
export const measureOf = ({ measure }: Crossed): string => `${measure.name}, ${measure.shown.unit}`;

/** Behind the name of the best: surely so, or not told from another; nothing where one run gives no interval. */
const SURE = '*';
const LEVEL_MARK = '=';

/** Who is best, as a cell of the table. */
export function bestOf({ best, level }: Cell): string {
  if (best === null) return 'no value';
  if (level === null) return best;
  return `${best} ${level.length === 0 ? SURE : LEVEL_MARK}`;
}

/** A severity to a hundredth or so of those tried. */
function severityText(severity: number, { severities }: Crossed): string {
  const span = severities.at(-1)! - severities[0]!;
  return fixed(severity, Math.max(0, decimalsFor(span / 50)));
}

/** `0.61 to 1.12`, or how far it is open. */
function intervalText({ lower, upper }: CrossedCase['changes'][number], crossed: Crossed): string {
  const [low, high] = [lower, upper].map((end) => (end === null ? null : severityText(end, crossed)));
  if (crossed.seeds < 2) return 'no interval';
  if (low !== null && high !== null) return `${low} to ${high}`;
  if (low !== null) return `not below ${low}`;
  return high === null ? 'undecided' : `not above ${high}`;
}

/** Who is best up to which severity, in one sentence. */
export function changesText(one: CrossedCase, crossed: Crossed): string {
  const { first, changes, cells } = one;
  if (first === null) return 'no policy gives a value in every run.';
  const all = cells.every(({ standings }) => standings.every(({ behind }) => sameAs(behind)));
  if (all) return 'all policies are the same in every run.';
  if (changes.length === 0) return `${first} at every severity.`;
  const until = changes.map((change, i) => {
    const at = `${severityText(change.severity, crossed)} (${intervalText(change, crossed)})`;
    return `${i === 0 ? 'up to' : 'from there to'} ${at} ${change.from}`;
  });
  return `${until.join(', ')}, beyond it ${changes.at(-1)!.to}.`;
}

/** The best itself has nothing to be behind. */
const sameAs = (behind: Cell['standings'][number]['behind']) =>
  behind === null || (behind.value === 0 && (behind.lower ?? 0) === 0 && (behind.upper ?? 0) === 0);

/** What the marks and the intervals mean. */
export function crossedNotes(crossed: Crossed): string[] {
  const { policies, seeds, runs, found } = crossed;
  const share = `${percentLevel(LEVEL)} %`;
  const many = `${counted(runs, 'run')}: ${counted(policies.length, 'policy', 'policies')}, ${counted(found.length, 'case')}, each under the same ${counted(seeds, 'seed')}.`;
  const left = found.flatMap(({ name, leftOut, first }) =>
    leftOut.length > 0 && first !== null
      ? [`${name}: some runs of ${listed(leftOut)} give no value, so the changes leave them out.`]
      : [],
  );
  if (seeds < 2) return [...left, `${many} One run gives no interval, so nothing is surely best.`];
  return [
    `${SURE} surely best: better than every other policy, all differences together at ${share}. ${LEVEL_MARK} best by its mean, not told from at least one other.`,
    ...left,
    `Between the severities tried each run is taken as linear; more of them show how far that holds. In brackets the ${share} interval of each change by itself (Fieller), open where no severity tried decides.`,
    many,
  ];
}
