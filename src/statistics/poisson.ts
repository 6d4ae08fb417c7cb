import jstat from 'jstat';

/** Terms smaller than this share of the largest change no digit. */
const NEGLIGIBLE = 1e-18;

/** The chance that a Poisson number of mean `mean` (above 0) is `k`. */
export function poissonChance(k: number, mean: number): number {
  return k < 0 ? 0 : Math.exp(k * Math.log(mean) - mean - jstat.jStat.gammaln(k + 1));
}

/** The chance that it is `k` or less: the terms are summed from `k` away from the mean, where they only fall. */
export function poissonUpTo(k: number, mean: number): number {
  if (k < 0) return 0;
  const below = k < mean;
  let at = below ? k : k + 1;
  let term = poissonChance(at, mean);
  const least = term * NEGLIGIBLE;
  let sum = 0;
  while (term > least && at >= 0) {
    sum += term;
    term *= below ? at / mean : mean / (at + 1);
    at += below ? -1 : 1;
  }
  return below ? sum : 1 - sum;
}

/** The mean of what it exceeds `k` by: of the pieces owed when demand over a lead time is Poisson. */
export function poissonExcess(k: number, mean: number): number {
  if (k < 0) return mean - k;
  return Math.max(0, mean * poissonChance(k, mean) + (mean - k) * (1 - poissonUpTo(k, mean)));
}
