import { durationText } from '../report/duration.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { UsageError } from './usage-error.ts';

/** Bytes up to which a page opens at once; of the largest that is written, which takes some seconds. */
const EASY = 1_500_000;
const MOST = 10_000_000;

const HOUR = 3600;
const endOf = ({ run }: Pick<Scenario, 'run'>): number => run.warmUp + run.length;

/**
 * The scenario with so many hours of its run and no more; what happens in them is the same.
 * @throws UsageError where they end within the warm-up
 */
export function beginningOf(scenario: Scenario, hours: number | undefined): Scenario {
  if (hours === undefined || hours * HOUR >= endOf(scenario)) return scenario;
  const { run } = scenario;
  const length = hours * HOUR - run.warmUp;
  if (length > 0) return { ...scenario, run: { ...run, length } };
  throw new UsageError(
    `--hours ${hours} ends within the warm-up of ${durationText(run.warmUp)}; expected more than that`,
  );
}

/** How to get a page of so many bytes. */
function remedy(
  scenario: Scenario,
  { size, bytes }: { readonly size: number; readonly bytes: number },
): string {
  const hours = Math.floor(((endOf(scenario) / HOUR) * bytes) / size);
  const enough = hours * HOUR > scenario.run.warmUp;
  return `--hours ${enough ? `${hours} ` : ''}plays back the beginning alone`;
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/**
 * What is to be said of a page of this size; nothing of one that is easy to open.
 * @throws UsageError where it is too large
 */
export function sizeNote(scenario: Scenario, size: number): string {
  if (size <= EASY) return '';
  if (size <= MOST)
    return ` It is above ${megabytes(EASY)} and takes a while to open: ${remedy(scenario, { size, bytes: EASY })}.`;
  throw new UsageError(
    `the page would have ${megabytes(size)}, and more than ${megabytes(MOST)} is asking too much of a browser; ` +
      remedy(scenario, { size, bytes: MOST }),
  );
}
