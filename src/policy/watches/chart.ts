import type { Controls } from '../../line/controls.ts';
import type { ChartWatch } from '../../scenario/watches.ts';
import { chartOf } from '../../statistics/charts/chart-of.ts';
import { Learner } from '../../statistics/charts/learner.ts';
import type { Watcher } from './watcher.ts';

/** More sigmas than any limit has, and few enough to be added up. */
const BEYOND = 1e9;

/** How many sigmas a value lies from the centre; where there is no spread, any deviation is beyond all limits. */
function standard(value: number, centre: number, sigma: number): number {
  if (sigma > 0) return (value - centre) / sigma;
  return BEYOND * Math.sign(value - centre);
}

/**
 * Acts when a control chart of a feature's readings signals, and starts the chart anew. A chart needs no identity, so
 * parts whose mark cannot be read count. What it learns of the centre and sigma, it learns once. What comes back starts
 * the chart anew, too.
 */
export function watchChart(spec: ChartWatch, controls: Controls, on: Watcher): () => void {
  const chart = chartOf(spec);
  const { aim } = controls.drawn(spec.of);
  const learner = spec.learns === undefined ? null : new Learner(spec.learns, aim);
  let centre = spec.centre ?? aim;
  let sigma = spec.sigma ?? Number.NaN;
  controls.onReadingAt(spec.at, spec.of, (value) => {
    if (on.deaf()) return;
    if (learner !== null && !learner.done) {
      learner.add(value);
      sigma = learner.sigma;
      centre = spec.centre ?? learner.centre;
      return;
    }
    if (!chart.next(standard(value, centre, sigma))) return;
    chart.restart();
    on.act();
  });
  return () => chart.restart();
}
