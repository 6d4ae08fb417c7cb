/**
 * So many evenly spaced points of equal weight that have this mean and standard deviation: they stand for a law that is
 * uniform, be it between two values or over many whole numbers.
 */
export function evenPoints(mean: number, sd: number, points: number): number[] {
  if (points < 2) return [mean];
  // The variance of n points a step d apart is d^2 (n^2 - 1) / 12.
  const step = sd * Math.sqrt(12 / (points ** 2 - 1));
  return Array.from({ length: points }, (_, i) => mean + (i - (points - 1) / 2) * step);
}
