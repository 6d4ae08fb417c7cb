import { AMONG, IN_A_ROW } from './iso-2859-switching.ts';

/**
 * The share of lots accepted in the long run under the switching rules between normal and tightened inspection of
 * ISO 2859-1, given the chance that either accepts a lot. Normal inspection lasts (2 - p^4) / ((1 - p)(1 - p^4)) lots on
 * average, tightened inspection (1 - q^5) / ((1 - q) q^5). Source: A. Hald and P. Thyregod (1965), The composite operating
 * characteristic under normal and tightened sampling inspection by attributes (from memory; derived in the tests).
 */
export function lotsAccepted(normal: number, tightened: number): number {
  if (normal >= 1) return 1;
  // Nothing brings normal inspection back.
  if (tightened <= 0) return 0;
  const kept = normal ** (AMONG - 1);
  const underNormal = (2 - kept) / ((1 - normal) * (1 - kept));
  const row = tightened ** IN_A_ROW;
  const underTightened = tightened >= 1 ? IN_A_ROW : (1 - row) / ((1 - tightened) * row);
  return (normal * underNormal + tightened * underTightened) / (underNormal + underTightened);
}
