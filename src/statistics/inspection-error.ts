import type { Range } from './box-probability.ts';
import { shareBetween } from './normal.ts';
import { normalMean } from './normal-mean.ts';

/** What an inspection with a gauge that errs makes of all parts, as shares of them. */
export interface InspectionError {
  /** Bad parts that are accepted. */
  readonly falseAccept: number;
  /** Good parts that are rejected. */
  readonly falseReject: number;
  readonly accept: number;
}

export interface Inspected {
  /** Between which values a part is good. */
  readonly limits: Range;
  /** Between which readings it is accepted: the limits, drawn in by a guard band where there is one. */
  readonly accepted: Range;
  /** Of the parts' true values. */
  readonly mean: number;
  readonly sd: number;
  /** Of reading minus true value. */
  readonly bias: number;
  readonly error: number;
}

/** Widest step of the quadrature, in standard deviations of whichever law is the narrower. */
const STEP = 0.25;

/**
 * How often a gauge with a normal error takes bad parts for good and good ones for bad: the true value and the
 * reading are bivariate normal (JCGM 106:2012, clause 9; formulas from memory). By quadrature over the error of the
 * gauge, to about 1e-10.
 */
export function inspectionError({ limits, accepted, mean, sd, bias, error }: Inspected): InspectionError {
  /** Share of the parts that are between these true values. */
  const parts = (lower: number, upper: number) => (upper <= lower ? 0 : shareBetween(lower, upper, mean, sd));
  if (sd === 0) {
    const good = limits.lower <= mean && mean <= limits.upper;
    const accept = shareBetween(accepted.lower, accepted.upper, mean + bias, error);
    return { falseAccept: good ? 0 : accept, falseReject: good ? 1 - accept : 0, accept };
  }
  const good = parts(limits.lower, limits.upper);
  // For a given error, the parts that are accepted and those of them that are good.
  const through = (z: number) => {
    const [from, to] = [accepted.lower - bias - error * z, accepted.upper - bias - error * z];
    return {
      all: parts(from, to),
      good: parts(Math.max(from, limits.lower), Math.min(to, limits.upper)),
    };
  };
  const kinks =
    error === 0
      ? []
      : [accepted.lower, accepted.upper].flatMap((reading) =>
          [limits.lower, limits.upper].map((limit) => (reading - bias - limit) / error),
        );
  const step = error > sd ? Math.max(STEP * (sd / error), 1e-3) : STEP;
  const goodAccepted = normalMean((z) => through(z).good, kinks, step);
  const total = Math.hypot(sd, error);
  const accept = shareBetween(accepted.lower, accepted.upper, mean + bias, total);
  return {
    falseAccept: normalMean((z) => through(z).all - through(z).good, kinks, step),
    falseReject: Math.max(0, good - goodAccepted),
    accept,
  };
}
