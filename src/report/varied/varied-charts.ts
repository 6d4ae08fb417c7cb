import * as Plot from '@observablehq/plot';
import { type Factor, numbersOf, quantityOf } from '../../experiment/varied/factor.ts';
import type { LevelMean } from '../../experiment/varied/level-means.ts';
import type { Varied } from '../../experiment/varied/varied.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { drawn, INK, type Options, WIDTH } from '../charts.ts';
import { cut } from '../columns.ts';
import { lookOf } from '../crossed/crossed-charts.ts';
import { measureOf, sideOf } from './varied-words.ts';

/** A chart with what stands above it. */
export interface Chart {
  readonly name: string;
  readonly svg: string;
  /** What its lines are, in the order of `lookOf`; none where there is one line. */
  readonly lines: readonly string[];
}

const HEIGHT = 210;
/** More labels would run into each other. */
const MOST_TICKS = 6;
/** Pairs of factors that are drawn. */
const MOST_PAIRS = 6;

interface Mark {
  readonly x: number;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

const shown = ({ value, lower, upper }: Estimate, factor: number): Omit<Mark, 'x'> => ({
  at: value * factor,
  from: (lower ?? value) * factor,
  to: (upper ?? value) * factor,
});

/** Numbers where they are, other values in a row. */
function places({ levels }: Factor): { at: readonly number[]; words: ReadonlyMap<number, string> } {
  const at = numbersOf({ levels }) ?? levels.map((_, i) => i);
  return { at, words: new Map(levels.map(({ words }, i) => [at[i]!, cut(words, 14)])) };
}

/** Some of them, evenly, the ends included. */
function some(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length <= MOST_TICKS) return sorted;
  return Array.from(
    { length: MOST_TICKS },
    (_, i) => sorted[Math.round((i * (sorted.length - 1)) / (MOST_TICKS - 1))]!,
  );
}

function axis(factor: Factor): NonNullable<Options['x']> {
  const { at, words } = places(factor);
  const [least, most] = [Math.min(...at), Math.max(...at)];
  const air = (most - least) * 0.08;
  return {
    domain: [least - air, most + air],
    ticks: some(at),
    tickFormat: (x: number) => words.get(x) ?? String(x),
    label: cut(factor.name, 40),
    labelAnchor: 'center',
    labelArrow: 'none',
  };
}

/** Ends of the vertical axis with some air, one for all panels. */
function scaleOf(estimates: readonly (Estimate | null)[], factor: number): [number, number] {
  const ends = estimates.flatMap((own) =>
    own ? [own.lower ?? own.value, own.upper ?? own.value, own.value] : [],
  );
  if (ends.length === 0) return [0, 1];
  const least = ends.reduce((a, b) => Math.min(a, b)) * factor;
  const most = ends.reduce((a, b) => Math.max(a, b)) * factor;
  const air = (most - least) * 0.06 || Math.max(1, Math.abs(most) * 0.1);
  return [least - air, most + air];
}

const frame = (
  x: NonNullable<Options['x']>,
  y: readonly [number, number],
  marks: NonNullable<Options['marks']>,
): Options => ({
  ...{ width: WIDTH, height: HEIGHT, marginLeft: 48, marginRight: 14, marginTop: 8, marginBottom: 42 },
  ...{ x, y: { domain: [...y], ticks: 5, grid: true, label: null }, marks },
});

function linePanel(
  varied: Varied,
  factor: Factor,
  lines: readonly (readonly Mark[])[],
  y: [number, number],
  label: string,
) {
  const marks = lines.flatMap((points, i) => {
    const { colour, dashes } = lookOf(i);
    return [
      Plot.lineY(points, { x: 'x', y: 'at', stroke: colour, strokeDasharray: dashes, strokeWidth: 2 }),
      Plot.ruleX(points, { x: 'x', y1: 'from', y2: 'to', stroke: colour, strokeWidth: 1.5 }),
      Plot.dot(points, { x: 'x', y: 'at', r: 3.5, fill: colour }),
    ];
  });
  return drawn(frame(axis(factor), y, marks), 'vary', `${measureOf(varied)} by ${label}.`);
}

const meansWith = (varied: Varied, factors: readonly number[]): LevelMean[] =>
  varied.means.filter(
    ({ at }) => at.length === factors.length && at.every((one, i) => one.factor === factors[i]),
  );

const sorted = (marks: readonly Mark[]): Mark[] => [...marks].sort((a, b) => a.x - b.x);

/** A panel a factor: the mean over all settings that have each of its values. */
function levelPanels(varied: Varied, y: [number, number]): Chart[] {
  return varied.factors.map((factor, i) => {
    const { at } = places(factor);
    const means = meansWith(varied, [i]);
    const line = means.map((own) => ({
      x: at[own.at[0]!.level]!,
      ...shown(own.estimate, varied.measure.shown.factor),
    }));
    return { name: factor.name, svg: linePanel(varied, factor, [sorted(line)], y, factor.name), lines: [] };
  });
}

/** Two factors together, a line a value of the second. */
function pairPanel(varied: Varied, [one, other]: readonly [number, number], y: [number, number]): Chart {
  const [first, second] = [varied.factors[one]!, varied.factors[other]!];
  const means = meansWith(varied, [one, other]);
  const { at } = places(first);
  const lines = second.levels.map((_, level) =>
    sorted(
      means
        .filter((own) => own.at[1]!.level === level)
        .map((own) => ({ x: at[own.at[0]!.level]!, ...shown(own.estimate, varied.measure.shown.factor) })),
    ),
  );
  const name = `${first.name}, a line a value of ${second.name}`;
  return {
    name,
    svg: linePanel(varied, first, lines, y, name),
    lines: second.levels.map(({ words }) => words),
  };
}

/** Of two factors their pair; of more those pairs that surely do something together beyond what each does. */
function pairsOf(varied: Varied): (readonly [number, number])[] {
  const { effects, factors, design } = varied;
  if (design.kind !== 'all' || (effects.kind !== 'two values' && effects.kind !== 'levels')) return [];
  if (factors.length === 2) return [[0, 1]];
  const keys = effects.rows.flatMap(({ factors: of, effect }) =>
    of.length === 2 && ['above 0', 'below 0'].includes(sideOf(effect)) ? [`${of[0]} ${of[1]}`] : [],
  );
  return [...new Set(keys)].slice(0, MOST_PAIRS).map((key) => {
    const [one, other] = key.split(' ').map(Number) as [number, number];
    return [one, other] as const;
  });
}

/** A panel a factor: each setting where its value is. */
function pointPanels(varied: Varied, y: [number, number]): Chart[] {
  return varied.factors.map((factor, i) => {
    const marks = varied.estimates.flatMap((own, point) =>
      own
        ? [
            {
              x: quantityOf(varied.design.points[point]![i]!)!.value,
              ...shown(own, varied.measure.shown.factor),
            },
          ]
        : [],
    );
    const options = frame(axis(factor), y, [
      Plot.ruleX(marks, { x: 'x', y1: 'from', y2: 'to', stroke: INK, strokeWidth: 1, strokeOpacity: 0.5 }),
      Plot.dot(marks, { x: 'x', y: 'at', r: 3, fill: INK }),
    ]);
    return {
      name: factor.name,
      svg: drawn(options, 'vary', `${measureOf(varied)} by ${factor.name}.`),
      lines: [],
    };
  });
}

/** What each factor does, by how large that is and how much it differs from place to place. */
function screenPanel(varied: Varied): Chart[] {
  const { effects, factors } = varied;
  if (effects.kind !== 'screened' || effects.rows.some(({ spread }) => spread === null)) return [];
  const { factor, unit } = varied.measure.shown;
  const marks = effects.rows.map(({ size, spread, matters }, i) => ({
    ...{
      x: size.value * factor,
      y: spread! * factor,
      name: cut(factors[i]!.name, 24),
      filled: matters !== false,
    },
  }));
  const [right, top] = [Math.max(...marks.map(({ x }) => x)) || 1, Math.max(...marks.map(({ y }) => y)) || 1];
  const label = { labelAnchor: 'center', labelArrow: 'none' } as const;
  const text = {
    x: 'x',
    y: 'y',
    text: 'name',
    fill: INK,
    stroke: 'var(--paper, #fff)',
    strokeWidth: 4,
    dy: -10,
  } as const;
  const onLeft = marks.filter(({ x }) => x < right / 2);
  const onRight = marks.filter(({ x }) => x >= right / 2);
  const options: Options = {
    ...{
      width: WIDTH,
      height: HEIGHT + 40,
      marginLeft: 52,
      marginRight: 14,
      marginTop: 14,
      marginBottom: 42,
    },
    x: { domain: [0, right * 1.08], ticks: 5, label: `size, ${unit}`, ...label },
    y: { domain: [0, top * 1.15], ticks: 5, grid: true, label: `spread, ${unit}`, ...label },
    marks: [
      Plot.dot(marks, {
        ...{ x: 'x', y: 'y', r: 4, stroke: INK, strokeWidth: 1.5 },
        fill: (mark: { filled: boolean }) => (mark.filled ? INK : 'var(--paper, #fff)'),
      }),
      Plot.text(onLeft, { ...text, textAnchor: 'start' }),
      Plot.text(onRight, { ...text, textAnchor: 'end' }),
    ],
  };
  const told = marks.map(
    ({ name, x, y }) => `${name} ${Number(x.toPrecision(3))} and ${Number(y.toPrecision(3))}`,
  );
  const svg = drawn(
    options,
    'vary',
    `Size and spread of effects on ${measureOf(varied)}: ${told.join('; ')}.`,
  );
  return [{ name: 'Size and spread of what each does', svg, lines: [] }];
}

/** The means that are drawn: by one factor each, and by the pairs that are. */
export function drawnMeans(varied: Varied): LevelMean[] {
  const pairs = pairsOf(varied);
  return varied.means.filter(
    ({ at }) =>
      at.length === 1 || pairs.some(([one, other]) => at[0]!.factor === one && at[1]!.factor === other),
  );
}

/** The response as panels, all by one scale. */
export function variedCharts(varied: Varied): Chart[] {
  if (varied.design.kind === 'screen') return screenPanel(varied);
  const { factor } = varied.measure.shown;
  if (varied.design.kind === 'latin') return pointPanels(varied, scaleOf(varied.estimates, factor));
  if (varied.means.length === 0) return [];
  const y = scaleOf(
    drawnMeans(varied).map(({ estimate }) => estimate),
    factor,
  );
  return [...levelPanels(varied, y), ...pairsOf(varied).map((pair) => pairPanel(varied, pair, y))];
}
