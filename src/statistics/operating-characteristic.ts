import jstat from 'jstat';

/**
 * Chance that a single sampling plan accepts: at most `accept` nonconforming items in a sample of `sample`, each of them
 * nonconforming with chance `share`, by the binomial law. Lots from a process follow it exactly, whatever their size; an
 * isolated lot follows the hypergeometric law. Source: Abramowitz and Stegun 26.5.24, the binomial law by the incomplete
 * beta function.
 */
export function acceptanceProbability(sample: number, accept: number, share: number): number {
  return accept >= sample ? 1 : jstat.jStat.ibeta(1 - share, sample - accept, accept + 1);
}

/** The share nonconforming at which the plan accepts with chance `chance`, 0 < chance < 1 and accept < sample. */
export function shareAccepted(sample: number, accept: number, chance: number): number {
  return 1 - jstat.jStat.ibetainv(chance, sample - accept, accept + 1);
}
