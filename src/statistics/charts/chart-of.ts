import type { Chart } from './chart.ts';
import { Cusum, type CusumSpec } from './cusum.ts';
import { Ewma, type EwmaSpec } from './ewma.ts';
import { MeanOf } from './mean-of.ts';
import { Shewhart, type ShewhartSpec } from './shewhart.ts';

/** A chart by its parameters; `meanOf` values make one of its points. */
export type ChartSpec = (ShewhartSpec | CusumSpec | EwmaSpec) & { readonly meanOf: number };

function plain(spec: ChartSpec): Chart {
  switch (spec.chart) {
    case 'shewhart':
      return new Shewhart(spec);
    case 'cusum':
      return new Cusum(spec);
    case 'ewma':
      return new Ewma(spec);
  }
}

/** A chart that is told single values in their sigmas. */
export function chartOf(spec: ChartSpec): Chart {
  const chart = plain(spec);
  return spec.meanOf > 1 ? new MeanOf(chart, spec.meanOf) : chart;
}
