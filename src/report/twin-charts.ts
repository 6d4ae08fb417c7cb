import * as Plot from '@observablehq/plot';
import type { Curve, Twins } from '../experiment/twins.ts';
import { drawn, INK, type Options, WIDTH } from './charts.ts';
import { cut } from './columns.ts';
import { fixed } from './format.ts';

/** The colour of the twin; it is dashed as well, for who cannot tell colours apart. */
export const TWIN_COLOUR = '#2c5684';
/** Height of the plot and of the lane of one disturbance above it, px. */
const HEIGHT = 170;
const LANE = 17;
/** A line has no more points than the eye can tell apart. */
const MOST_POINTS = 160;

const HOUR = 3600;
const DAY = 86_400;

/** Times of a run are shown in hours, and in days where there are many. */
export function timeUnit(end: number): { readonly unit: string; readonly size: number } {
  return end > 4 * DAY ? { unit: 'd', size: DAY } : { unit: 'h', size: HOUR };
}

/** Round values up to the top of a scale, about four of them. */
function ticksUpTo(top: number): number[] {
  const power = 10 ** Math.floor(Math.log10(top / 4));
  const step = [1, 2, 5, 10].map((of) => of * power).find((size) => top / size <= 5)!;
  return Array.from({ length: Math.floor(top / step) + 1 }, (_, i) => i * step);
}

function panel(curve: Curve, [from, to]: readonly [number, number], top: number): string {
  const { unit, size } = timeUnit(to);
  const every = Math.ceil(curve.times.length / MOST_POINTS);
  const points = curve.times.flatMap((time, i) => {
    if (i % every !== 0 && i !== curve.times.length - 1) return [];
    const { value, lower, upper } = curve.disturbed[i]!;
    return [{ time: time / size, value, lower: lower ?? value, upper: upper ?? value, twin: curve.twin[i]! }];
  });
  const names = [...new Set(curve.shades.map(({ name }) => name))];
  const lane = (top * LANE) / HEIGHT;
  const middle = (from + to) / 2 / size;
  const shades = curve.shades.flatMap(({ name, from: begin, to: end }) => {
    const [x1, x2] = [Math.max(begin, from) / size, Math.min(end, to) / size];
    if (x1 >= x2) return [];
    const low = top + names.indexOf(name) * lane;
    return [{ name, x1, x2, y1: low + 0.12 * lane, y2: low + 0.88 * lane, y: low + lane / 2 }];
  });
  const first = names.flatMap((name) => shades.find((shade) => shade.name === name) ?? []);
  const [early, late] = [true, false].map((is) => first.filter(({ x1 }) => x1 < middle === is));
  const label = {
    y: 'y',
    text: ({ name }: { name: string }) => cut(name, 26),
    fill: INK,
    fontSize: 11,
  };
  const whole = top + names.length * lane;
  const least = points.reduce((low, point) =>
    point.value - point.twin < low.value - low.twin ? point : low,
  );
  const rate = (value: number) => fixed(value, 0);
  const told =
    `Rolling rate under ${curve.policy}, good per hour: deepest below its twin at ` +
    `${fixed(least.time, 1)} ${unit}, with ${rate(least.value)} against ${rate(least.twin)}. ` +
    `Disturbances: ${shades.map(({ name, x1, x2 }) => `${name} ${fixed(x1, 1)} to ${fixed(x2, 1)} ${unit}`).join(', ') || 'none in every run'}.`;
  const options: Options = {
    width: WIDTH,
    height: HEIGHT + names.length * LANE + 52,
    marginLeft: 44,
    marginRight: 12,
    marginTop: 8,
    marginBottom: 44,
    x: {
      domain: [from / size, to / size],
      label: `${unit} since the start of the run`,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 6,
    },
    y: { domain: [0, whole], ticks: ticksUpTo(top), grid: true, label: null },
    marks: [
      Plot.rect(shades, { x1: 'x1', x2: 'x2', y1: 0, y2: top, fill: INK, fillOpacity: 0.07 }),
      Plot.rect(shades, { x1: 'x1', x2: 'x2', y1: 'y1', y2: 'y2', fill: INK, fillOpacity: 0.22 }),
      Plot.areaY(points, { x: 'time', y1: 'lower', y2: 'upper', fill: INK, fillOpacity: 0.2 }),
      Plot.lineY(points, {
        x: 'time',
        y: 'twin',
        stroke: TWIN_COLOUR,
        strokeWidth: 1.8,
        strokeDasharray: '6 4',
      }),
      Plot.lineY(points, { x: 'time', y: 'value', stroke: INK, strokeWidth: 1.8 }),
      Plot.ruleY([0], { stroke: INK }),
      Plot.text(early!, { ...label, x: 'x1', textAnchor: 'start', dx: 3 }),
      Plot.text(late!, { ...label, x: 'x2', textAnchor: 'end', dx: -3 }),
    ],
  };
  return drawn(options, 'twin', told);
}

/** One panel a policy, all by the same scales: the rolling rate disturbed and undisturbed, disturbances shaded. */
export function twinCharts({ curves }: Twins): { policy: string; svg: string }[] {
  const all = curves.flatMap(({ disturbed, twin }) => [
    ...disturbed.map(({ value, upper }) => upper ?? value),
    ...twin,
  ]);
  const top = Math.max(...all, 1) * 1.05;
  const { times } = curves[0]!;
  // What went on before the first whole window is not drawn.
  return curves.map((curve) => ({
    policy: curve.policy,
    svg: panel(curve, [times[0]!, times.at(-1)!], top),
  }));
}
