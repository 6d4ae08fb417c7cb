/**
 * A series smoothed for the eye, so that it shows where it has settled: means of the `2 window + 1` readings around each one,
 * of fewer at the start where there are not so many before it; the last `window` readings have none. P. D. Welch (1983), in
 * S. S. Lavenberg, Computer Performance Modeling Handbook; A. M. Law, Simulation Modeling and Analysis, chapter 9.
 * @param series means over runs, reading by reading
 * @returns `series.length - window` values, none for a shorter series
 */
export function movingAverage(series: readonly number[], window: number): number[] {
  return Array.from({ length: Math.max(0, series.length - window) }, (_, i) => {
    const reach = Math.min(i, window);
    let sum = 0;
    for (let j = i - reach; j <= i + reach; j++) sum += series[j]!;
    return sum / (2 * reach + 1);
  });
}
