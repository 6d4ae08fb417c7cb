import { UsageError } from './usage-error.ts';
import { secondsWithin } from './within.ts';

/** What the command line says of when runs stop by themselves. */
export interface GivenStopping {
  /** Runs of each policy in the first stage. */
  readonly seeds?: number;
  readonly atMost?: number;
  readonly within?: string;
}

/** Runs of each policy from which the spread is told; common practice, for fewer tell it badly. */
const FIRST_STAGE = 10;
/** Runs of each policy, unless said otherwise. */
const AT_MOST = 500;
/** Time, s, unless said otherwise. */
const WITHIN = 3600;

/** First stage and cap, in runs of each policy, and the time, s. */
export interface Stopping {
  readonly firstStage: number;
  readonly most: number;
  readonly within: number;
}

/** @throws UsageError */
export function stoppingOf({ seeds = FIRST_STAGE, atMost = AT_MOST, within }: GivenStopping): Stopping {
  if (seeds < 2)
    throw new UsageError(
      `--seeds ${seeds} is too few: here it is the first stage, from which the spread is told; 2 is the least, ${FIRST_STAGE} is common`,
    );
  if (atMost < seeds)
    throw new UsageError(
      `--at-most ${atMost} is less than the first stage of ${seeds} runs of each policy; raise it, or make the first stage smaller by --seeds`,
    );
  return { firstStage: seeds, most: atMost, within: secondsWithin(within, WITHIN) };
}

/** Options that are of no use without one of these. */
const OF_CHOICE = ['by', 'sure', 'procedure'] as const;
const OF_BOTH = ['atMost', 'within'] as const;

type Own = (typeof OF_CHOICE)[number] | (typeof OF_BOTH)[number] | 'halfWidth';

const written = (option: string) => `--${option.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/**
 * Refuses what would be without effect in an ordinary comparison.
 * @throws UsageError
 */
export function refuseWithout(given: Readonly<Partial<Record<Own, unknown>>>): void {
  for (const option of OF_CHOICE)
    if (given[option] !== undefined)
      throw new UsageError(`${written(option)} is of use with --until-decided alone`);
  for (const option of OF_BOTH)
    if (given[option] !== undefined && given.halfWidth === undefined)
      throw new UsageError(`${written(option)} is of use with --until-decided or --half-width alone`);
}

/** What is said where the time ended it. */
export const outOfTime = (most: number): string =>
  `mendline: the time is over, see --within; the report is that of --at-most ${most}.`;
