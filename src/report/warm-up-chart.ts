import * as Plot from '@observablehq/plot';
import type { Pilot } from '../experiment/pilot.ts';
import { drawn, INK, WIDTH } from './charts.ts';
import { durationText } from './duration.ts';
import { TWIN_COLOUR, timeUnit } from './twin-charts.ts';

const HEIGHT = 200;

/** The output of the pilot against time: a dot a batch, the moving average as a line, what is not counted shaded. */
export function warmUpChart({ rates, smoothed, batch, length, warmUp, settled }: Pilot): string {
  const { unit, size } = timeUnit(length);
  const middle = (i: number) => ((i + 0.5) * batch) / size;
  const dots = rates.map((rate, i) => ({ time: middle(i), rate }));
  const line = smoothed.map((rate, i) => ({ time: middle(i), rate }));
  const told =
    `Good per hour in batches of ${durationText(batch)}; counted from ${durationText(warmUp)} on; ` +
    `MSER-5 would count ${settled === null ? 'from no time in the first half' : `from ${durationText(settled)} on`}.`;
  const rules = settled === null ? [] : [{ time: settled / size }];
  const shaded = warmUp > 0 ? [{ from: 0, to: warmUp / size }] : [];
  return drawn(
    {
      width: WIDTH,
      height: HEIGHT,
      marginLeft: 44,
      marginRight: 12,
      marginTop: 10,
      marginBottom: 44,
      x: {
        domain: [0, length / size],
        label: `${unit} since the start of the run`,
        labelAnchor: 'center',
        labelArrow: 'none',
        ticks: 6,
      },
      y: { domain: [0, Math.max(1, ...rates) * 1.05], grid: true, label: null, ticks: 5 },
      marks: [
        Plot.rectX(shaded, { x1: 'from', x2: 'to', fill: INK, fillOpacity: 0.12 }),
        Plot.dot(dots, { x: 'time', y: 'rate', r: 1.6, fill: INK, fillOpacity: 0.55 }),
        Plot.lineY(line, { x: 'time', y: 'rate', stroke: INK, strokeWidth: 1.8 }),
        Plot.ruleX(rules, { x: 'time', stroke: TWIN_COLOUR, strokeWidth: 1.8, strokeDasharray: '6 4' }),
        Plot.ruleY([0], { stroke: INK }),
      ],
    },
    'warm-up',
    told,
  );
}
