import { normalDeviate } from '../../../src/kernel/distributions/normal.ts';
import { type Stream, Streams } from '../../../src/kernel/streams.ts';

/**
 * What is counted in the experiments, and what its share is held to. `covers`: the interval holds the exact value, as often as
 * its level says. `at least`: so it does, or the choice is right, no less often than is stated. `at most`: what is said
 * is wrong, no more often than is stated.
 */
type Claim = 'covers' | 'at least' | 'at most';

/** Something that is stated with a probability, on a case whose answer is known. */
export interface Calibration {
  readonly id: string;
  readonly what: string;
  /** Where the method, and the exact answer, come from. */
  readonly source: string;
  /** What the intervals should hold, or which choice is right, in words or figures. */
  readonly exact: string;
  readonly claim: Claim;
  /** The probability that is stated. */
  readonly stated: number;
  /** The exact probability in this case, where theory has it; else null. */
  readonly theory: number | null;
  /** Does experiment number `number` and says whether what is counted came about. */
  readonly experiment: (number: number) => boolean;
}

/** Coverage that intervals are made for. */
export const LEVEL = 0.95;

/** Luck of one experiment. */
export interface Luck {
  /** A standard normal number. */
  readonly normal: () => number;
  /** An exponential number of mean 1. */
  readonly exponential: () => number;
  /** A number even between 0 and 1. */
  readonly even: Stream;
}

function luckOf(stream: Stream): Luck {
  return {
    normal: () => normalDeviate(stream),
    exponential: () => -Math.log1p(-stream()),
    even: stream,
  };
}

interface Drawn extends Omit<Calibration, 'experiment' | 'stated' | 'theory'> {
  readonly stated?: number;
  readonly theory?: number;
  readonly experiment: (luck: Luck) => boolean;
}

/** A case of plain draws: each experiment has a stream of its own. */
export const drawn = ({ stated = LEVEL, theory, experiment, ...rest }: Drawn): Calibration => ({
  ...rest,
  stated,
  theory: theory ?? null,
  experiment: (number) => experiment(luckOf(new Streams(number).of(rest.id))),
});

export const times = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));

/** Whether an interval holds a value. One that is open to a side goes on for ever there; null is no interval at all. */
export const holds = (
  found: { readonly lower: number | null; readonly upper: number | null } | null,
  exact: number,
): boolean =>
  found !== null &&
  (found.lower ?? Number.NEGATIVE_INFINITY) <= exact &&
  exact <= (found.upper ?? Number.POSITIVE_INFINITY);
