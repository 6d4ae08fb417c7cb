import type { Law } from '../kernel/distributions/index.ts';

/**
 * The law of `about + factor * (x - about)`, x being drawn by `law` from the same numbers.
 * @param factor not negative
 * @throws RangeError for a law that starts at zero, which can only be stretched about zero
 */
export function stretched(law: Law, factor: number, about = 0): Law {
  const to = (x: number) => about + factor * (x - about);
  switch (law.distribution) {
    case 'constant':
      return { ...law, value: to(law.value) };
    case 'uniform':
      return { ...law, low: to(law.low), high: to(law.high) };
    case 'triangular':
      return { ...law, low: to(law.low), mode: to(law.mode), high: to(law.high) };
    case 'normal':
      return { ...law, mean: to(law.mean), sd: factor * law.sd };
    case 'empirical':
      return { ...law, values: law.values.map(to) };
  }
  if (about !== 0) throw new RangeError(`a ${law.distribution} law cannot be stretched about ${about}`);
  if (factor === 0) return { distribution: 'constant', value: 0 };
  switch (law.distribution) {
    case 'lognormal':
    case 'gamma':
      return { ...law, mean: factor * law.mean, sd: factor * law.sd };
    case 'weibull':
    case 'exponential':
      return { ...law, mean: factor * law.mean };
    case 'geometric':
      return { ...law, step: factor * law.step };
  }
}

/** A law whose bounds, and whatever it may give, are kept from `least` to `most`. Others than of sizes stay as they are. */
export function within(law: Law, least: number, most: number): Law {
  const keep = (x: number) => Math.min(most, Math.max(least, x));
  switch (law.distribution) {
    case 'constant':
      return { ...law, value: keep(law.value) };
    case 'uniform':
      return { ...law, low: keep(law.low), high: keep(law.high) };
    case 'triangular':
      return { ...law, low: keep(law.low), mode: keep(law.mode), high: keep(law.high) };
    case 'empirical':
      return { ...law, values: law.values.map(keep) };
    default:
      return law;
  }
}
