import { sampleCovariance, sampleVariance } from 'simple-statistics';

/** What running two systems under the same seeds gains. */
export interface Pairing {
  /** Sample variance of the paired differences. */
  readonly paired: number;
  /** What it would be were the runs independent: the sum of the two variances. */
  readonly unpaired: number;
  /**
   * The one as a share of the other, so that this share of the runs gives the same interval; 1 gains nothing, more loses.
   * Null where nothing varies.
   */
  readonly share: number | null;
}

/**
 * By the variance of a difference, s1^2 + s2^2 - 2 r s1 s2; A. M. Law, Simulation Modeling and Analysis, chapter 11.
 * @param one values of two runs or more
 * @param other as many, under the same seeds in the same order
 */
export function pairingOf(one: readonly number[], other: readonly number[]): Pairing {
  const [a, b] = [[...one], [...other]];
  const unpaired = sampleVariance(a) + sampleVariance(b);
  const paired = Math.max(0, unpaired - 2 * sampleCovariance(a, b));
  return { paired, unpaired, share: unpaired > 0 ? paired / unpaired : null };
}
