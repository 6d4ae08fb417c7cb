import * as Plot from '@observablehq/plot';
import type { Crossed, CrossedCase } from '../../experiment/crossed.ts';
import { drawn, INK, type Options, WIDTH } from '../charts.ts';
import { changesText, measureOf } from './crossed-words.ts';

/** How the line of a policy looks: each differs in its dashes as well, for who cannot tell colours apart. */
export interface LineLook {
  readonly colour: string;
  readonly dashes: string;
}

const COLOURS = ['#1d2326', '#2c5684', '#9a4f0c', '#1b5e37', '#7a2a6b', '#5c5a12', '#8c1d2c'] as const;
const DASHES = ['none', '7 3', '2 3', '9 3 2 3'] as const;
const HEIGHT = 210;

/** Looks repeat only after many more policies than a chart can hold. */
export const lookOf = (policy: number): LineLook => ({
  colour: COLOURS[policy % COLOURS.length]!,
  dashes: DASHES[policy % DASHES.length]!,
});

/** Policies that are the best somewhere in a case. */
const leading = ({ cells, first, changes }: CrossedCase) =>
  new Set([first, ...cells.map(({ best }) => best), ...changes.map(({ to }) => to)]);

function panel(one: CrossedCase, crossed: Crossed, [low, high]: readonly [number, number]): string {
  const { policies, severities, measure } = crossed;
  const { factor } = measure.shown;
  const best = leading(one);
  const lines = policies.map((policy, i) => ({
    leads: best.has(policy),
    look: lookOf(i),
    points: one.cells.flatMap(({ severity, standings }) => {
      const estimate = standings[i]!.estimate;
      if (!estimate) return [];
      const { value, lower, upper } = estimate;
      const [at, from, to] = [value, lower ?? value, upper ?? value].map((of) => of * factor);
      return [{ severity, at, from, to }];
    }),
  }));
  // Who is the best nowhere stands behind, thin and without a band.
  const sorted = [...lines].sort((a, b) => Number(a.leads) - Number(b.leads));
  const scale = { x: 'severity' } as const;
  const spans = one.changes.flatMap(({ lower, upper }) =>
    crossed.seeds > 1 ? [{ from: lower ?? severities[0]!, to: upper ?? severities.at(-1)! }] : [],
  );
  const options: Options = {
    width: WIDTH,
    height: HEIGHT,
    marginLeft: 48,
    marginRight: 14,
    marginTop: 8,
    marginBottom: 42,
    x: {
      domain: [severities[0]!, severities.at(-1)!],
      ticks: [...severities],
      tickFormat: String,
      label: 'severity',
      labelAnchor: 'center',
      labelArrow: 'none',
    },
    y: { domain: [low, high], ticks: 5, grid: true, label: null },
    marks: [
      ...sorted
        .filter(({ leads }) => leads)
        .map(({ points, look }) =>
          Plot.areaY(points, { ...scale, y1: 'from', y2: 'to', fill: look.colour, fillOpacity: 0.13 }),
        ),
      ...sorted.map(({ points, look, leads }) =>
        Plot.lineY(points, {
          ...scale,
          y: 'at',
          stroke: look.colour,
          strokeDasharray: look.dashes,
          strokeWidth: leads ? 2.2 : 1,
          strokeOpacity: leads ? 1 : 0.65,
        }),
      ),
      ...sorted
        .filter(({ leads }) => leads)
        .map(({ points, look }) => Plot.dot(points, { ...scale, y: 'at', r: 3, fill: look.colour })),
      Plot.ruleX(one.changes, { x: 'severity', stroke: INK, strokeWidth: 0.8, strokeDasharray: '2 3' }),
      Plot.ruleY(spans, { y: low, x1: 'from', x2: 'to', stroke: INK, strokeWidth: 5, strokeOpacity: 0.45 }),
    ],
  };
  return drawn(
    options,
    'cross',
    `${measureOf(crossed)} in case ${one.name}. Best: ${changesText(one, crossed)}`,
  );
}

/** One panel a case, all by the same scales: the mean of the measure by severity, a line a policy. */
export function crossedCharts(crossed: Crossed): { name: string; svg: string }[] {
  const { factor } = crossed.measure.shown;
  const ends = crossed.found.flatMap(({ cells }) =>
    cells.flatMap(({ standings }) =>
      standings.flatMap(({ estimate }) =>
        estimate ? [estimate.lower ?? estimate.value, estimate.upper ?? estimate.value] : [],
      ),
    ),
  );
  const [least, most] = [Math.min(...ends) * factor, Math.max(...ends) * factor];
  const air = (most - least) * 0.05 || 1;
  const scale = ends.length > 0 ? ([least - air, most + air] as const) : ([0, 1] as const);
  return crossed.found.map((one) => ({ name: one.name, svg: panel(one, crossed, scale) }));
}
