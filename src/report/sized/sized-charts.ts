import * as Plot from '@observablehq/plot';
import type { Configuration, Sized } from '../../experiment/sizing/sized.ts';
import { drawn, INK, type Options, WIDTH } from '../charts.ts';
import { costText, plain, sizesText, targetText } from './sized-words.ts';

const MARK = '#2c5684';
const HEIGHT = 300;

interface Dot {
  readonly cost: number;
  readonly mean: number;
  readonly frontier: boolean;
  readonly chosen: boolean;
}

function dotsOf({ configurations, targets, chosen }: Sized): Dot[] {
  const { factor } = targets[0]!.shown;
  return configurations.flatMap((one: Configuration) => {
    const mean = one.means[0];
    return mean
      ? [{ cost: one.cost, mean: mean.value * factor, frontier: one.frontier, chosen: one === chosen }]
      : [];
  });
}

/** What the chart's signs mean. */
export const curveKey = ({ first, targets, chosen }: Sized): string =>
  `Dots: choices of sizes that were simulated, each by the mean of its first ${first} runs. Filled dots on the line: the cheapest ` +
  `found for their level of ${targets[0]!.name}. Dashed: the target.${chosen ? ' Ring: the choice.' : ''}`;

/** Cost against the mean of the first target; null where no run gave a value. */
export function curveChart(sized: Sized): string | null {
  const dots = dotsOf(sized);
  if (dots.length === 0) return null;
  const target = sized.targets[0]!;
  const limit = target.value * target.shown.factor;
  const line = dots.filter(({ frontier }) => frontier);
  const options: Options = {
    width: WIDTH,
    height: HEIGHT,
    marginLeft: 48,
    marginRight: 16,
    marginTop: 24,
    marginBottom: 42,
    x: { label: `cost, ${sized.money}`, labelAnchor: 'center', labelArrow: 'none', ticks: 5, nice: true },
    y: {
      label: `${target.name}, ${target.shown.unit}`,
      labelArrow: 'none',
      ticks: 5,
      grid: true,
      nice: true,
    },
    marks: [
      Plot.ruleY([limit], { stroke: INK, strokeDasharray: '6 4', strokeWidth: 1.2 }),
      Plot.line(line, { x: 'cost', y: 'mean', curve: 'step-after', stroke: MARK, strokeWidth: 1.6 }),
      Plot.dot(
        dots.filter(({ frontier }) => !frontier),
        { x: 'cost', y: 'mean', r: 2.2, stroke: INK, strokeOpacity: 0.6, strokeWidth: 0.9 },
      ),
      Plot.dot(line, { x: 'cost', y: 'mean', r: 3.2, fill: MARK }),
      Plot.dot(
        dots.filter(({ chosen }) => chosen),
        { x: 'cost', y: 'mean', r: 8, stroke: INK, strokeWidth: 2 },
      ),
    ],
  };
  const told = line.map(({ cost, mean }) => `${plain(cost)}: ${Number(mean.toPrecision(4))}`).join('; ');
  const choice = sized.chosen
    ? ` Chosen: ${sizesText(sized, sized.chosen)}, for ${costText(sized, sized.chosen.cost)}.`
    : '';
  return drawn(
    options,
    'curve',
    `${target.name} against cost, target ${targetText(target)}. Cheapest found, cost and mean: ${told}.${choice}`,
  );
}
