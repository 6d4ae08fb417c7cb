import type { ChartSpec } from '../charts/chart-of.ts';
import { cusumRunLength } from './cusum.ts';
import { ewmaRunLength } from './ewma.ts';
import { shewhartRunLength } from './shewhart.ts';

function points(spec: ChartSpec, shift: number): number {
  switch (spec.chart) {
    case 'shewhart':
      return shewhartRunLength(spec, shift);
    case 'cusum':
      return cusumRunLength(spec, shift);
    case 'ewma':
      return ewmaRunLength(spec, shift);
  }
}

/** Beyond this, rounding decides. */
const LONGEST = 1e10;

/**
 * The mean number of values from the start of a chart to its signal, where values are independent and normal, the
 * centre and sigma are as the chart has them, and the mean is off by `shift` sigmas of a value; null where that is too
 * long, or the chart too wide, to be worked out.
 */
export function runLength(spec: ChartSpec, shift: number): number | null {
  const found = points(spec, shift * Math.sqrt(spec.meanOf));
  return found > 0 && found < LONGEST ? spec.meanOf * found : null;
}
