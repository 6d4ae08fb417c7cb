import type { Law } from '../../kernel/distributions/index.ts';

/** The least time a law can give; zero where nothing better is known. */
export function leastOf(law: Law): number {
  switch (law.distribution) {
    case 'constant':
      return law.value;
    case 'uniform':
    case 'triangular':
      return law.low;
    case 'empirical':
      return Math.min(...law.values);
    default:
      return 0;
  }
}

/** The most time a law can give; infinite where nothing better is known. */
export function mostOf(law: Law): number {
  switch (law.distribution) {
    case 'constant':
      return law.value;
    case 'uniform':
    case 'triangular':
      return law.high;
    case 'empirical':
      return Math.max(...law.values);
    default:
      return Number.POSITIVE_INFINITY;
  }
}
