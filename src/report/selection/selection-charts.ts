import * as Plot from '@observablehq/plot';
import { allowanceOf } from '../../experiment/selection/allowance.ts';
import type { Selection } from '../../experiment/selection/select.ts';
import { signOf } from '../../statistics/comparing/better.ts';
import { drawn, INK, type Options, WIDTH } from '../charts.ts';
import { formatOfSelection } from './selection-words.ts';

const HEIGHT = 200;
/** Runs beyond the first stage that a panel shows at least. */
const LEAST_WIDTH = 5;
const LINE = '#2c5684';

/** A pair of policies that the choice went by; by number. */
interface Course {
  readonly policy: number;
  /** Who it was left out by, or the one ahead. */
  readonly by: number;
  readonly runs: number;
}

function coursesOf({ policies, standing }: Selection): Course[] {
  return policies.flatMap((_, policy): Course[] => {
    const gone = standing.out.find((one) => one.policy === policy);
    if (gone) return [gone];
    return policy === standing.best ? [] : [{ policy, by: standing.best!, runs: standing.runs }];
  });
}

function panel(selection: Selection, { policy, by, runs }: Course) {
  const { policies, measure, settings, values } = selection;
  const { factor, unit } = measure.shown;
  const { firstStage, procedure } = settings;
  const allowance = procedure === 'sequential' ? allowanceOf(values, settings)(policy, by) : null;
  const allowed = (after: number) => (allowance?.after(after) ?? 0) * factor;
  let sum = 0;
  const points = values[by]!.slice(0, runs).flatMap((value, run) => {
    sum += signOf(settings.better) * (value - values[policy]![run]!);
    return run + 1 < firstStage ? [] : [{ runs: run + 1, ahead: (sum / (run + 1)) * factor }];
  });
  const last = points.at(-1)!;
  // A course that ended with the first stage has no width of its own.
  const right = Math.max(last.runs, firstStage + LEAST_WIDTH);
  const edge = Array.from({ length: right - firstStage + 1 }, (_, i) => ({
    ...{ runs: firstStage + i, above: allowed(firstStage + i), below: -allowed(firstStage + i) },
  }));
  const ends = [...points.map(({ ahead }) => ahead), ...edge.flatMap(({ above, below }) => [above, below])];
  const [low, high] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const air = (high - low) * 0.06 || 1;
  const options: Options = {
    ...{ width: WIDTH, height: HEIGHT, marginLeft: 48, marginRight: 14, marginTop: 8, marginBottom: 42 },
    x: {
      domain: [firstStage, right],
      ticks: Math.min(6, right - firstStage),
      tickFormat: (runs: number) => (Number.isInteger(runs) ? String(runs) : ''),
      ...{ label: 'runs of each', labelAnchor: 'center', labelArrow: 'none' },
    },
    y: { domain: [low - air, high + air], ticks: 5, grid: true, label: null },
    marks: [
      ...(allowance
        ? [
            Plot.areaY(edge, { x: 'runs', y1: 'below', y2: 'above', fill: INK, fillOpacity: 0.1 }),
            Plot.lineY(edge, { x: 'runs', y: 'above', stroke: INK, strokeDasharray: '2 3' }),
          ]
        : []),
      Plot.ruleY([0], { stroke: INK, strokeWidth: 0.8 }),
      Plot.lineY(points, { x: 'runs', y: 'ahead', stroke: LINE, strokeWidth: 2 }),
      Plot.dot([last], { x: 'runs', y: 'ahead', r: 4, fill: LINE }),
    ],
  };
  const format = formatOfSelection(selection);
  const [name, other] = [policies[by]!, policies[policy]!];
  const [ahead, most] = [last.ahead, allowed(last.runs)].map((value) => format.value(value / factor));
  const told =
    `${name} ahead of ${other} in ${measure.name}, ${unit}, by number of runs: ${ahead} after ${last.runs}` +
    (allowance ? `, where ${most} is the most that leaves both in.` : '.');
  return { name: `${name} ahead of ${other}`, svg: drawn(options, 'selection', told) };
}

/** One panel a policy: how far another was ahead of it, from the end of the first stage until it was left out or all ended. */
export const selectionCharts = (selection: Selection): { name: string; svg: string }[] =>
  coursesOf(selection).map((course) => panel(selection, course));
