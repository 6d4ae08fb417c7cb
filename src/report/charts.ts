import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import type { Comparison, MeasureComparison } from '../experiment/comparison.ts';
import type { State } from '../line/state.ts';
import { cellsOf, headingOf } from './cells.ts';
import { cut } from './columns.ts';
import { escapeHtml } from './escape.ts';
import { percent } from './format.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';

/** Panels are drawn this wide, px, so that their text stays readable on a phone. */
export const WIDTH = 340;
/** px: what a sign of a number takes at most. */
const SIGN = 7.7;
const ROW = 30;
const NAMED_ROW = 42;
export const INK = 'currentColor';
/** Ground behind text that lies over rules; white where the picture stands by itself. */
const PAPER = 'var(--paper, #fff)';

export type Options = NonNullable<Parameters<typeof Plot.plot>[0]>;

/** Labels are cut to what their margin holds. */
function labels(names: readonly string[]): { texts: string[]; margin: number } {
  const texts = names.map((name) => cut(name, 18));
  const longest = Math.max(...texts.map((text) => [...text].length));
  return { texts, margin: Math.max(50, Math.round(longest * 7.6) + 14) };
}

/** Plot names each group of its shapes, which no reader may be told: the picture has one name for all of it. */
const withoutMarkNames = (svg: string): string =>
  svg.replace(/(<g[^>]*?) aria-label="(?![xy]-axis)[^"]*"/g, '$1');

/** As much of an element as is asked here. */
interface Drawn {
  readonly outerHTML: string;
  readonly textContent: string | null;
  getAttribute(name: string): string | null;
  querySelectorAll(which: string): Iterable<Drawn>;
}

function plotted(options: Options, kind: string): Drawn {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  // A class name of our own: Plot would otherwise make one up.
  return Plot.plot({ ...options, className: `chart-${kind}`, document }) as unknown as Drawn;
}

/** By how much the first and the last number of the scale stand out over the edges, px. */
function overhang(svg: Drawn, width: number): { readonly left: number; readonly right: number } {
  let [left, right] = [0, 0];
  for (const tick of svg.querySelectorAll('[aria-label="x-axis tick label"] text')) {
    const [, x] = /^translate\(([\d.-]+)/.exec(tick.getAttribute('transform') ?? '') ?? [];
    const half = ([...(tick.textContent ?? '')].length * SIGN) / 2;
    left = Math.max(left, Math.ceil(half - Number(x)));
    right = Math.max(right, Math.ceil(Number(x) + half - width));
  }
  return { left, right };
}

/** Drawn anew with wider margins where a number would be cut at an edge. */
function withRoom(options: Options, kind: string): Drawn {
  const svg = plotted(options, kind);
  const { left, right } = overhang(svg, options.width ?? WIDTH);
  if (left === 0 && right === 0) return svg;
  const { marginLeft = 0, marginRight = 0 } = options;
  return plotted({ ...options, marginLeft: marginLeft + left, marginRight: marginRight + right }, kind);
}

/** The picture as text, named for who cannot see it. */
export function drawn(options: Options, kind: string, label: string): string {
  const svg = withRoom(options, kind);
  const style = `width:100%;max-width:${WIDTH * 1.25}px;height:auto;font-size:12px`;
  // Written into the text, for the document's own writer leaves < as it is in attributes.
  return withoutMarkNames(svg.outerHTML).replace(
    '<svg',
    () => `<svg role="img" aria-label="${escapeHtml(label)}" style="${style}"`,
  );
}

/** Ends of the axis with some air. Where every value is equal, they stay within 0 and `most`, as a measure does. */
function around(values: readonly number[], most: number): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (low === high) {
    const air = Math.max(high * 0.1, 1);
    return [Math.max(0, low - air), Math.min(most, high + air)];
  }
  const air = (high - low) * 0.06;
  return [low - air, high + air];
}

function intervalPanel(compared: MeasureComparison, comparison: Comparison): string {
  const { measure, rows } = compared;
  const { policies, baseline } = comparison;
  const { factor, unit } = measure.shown;
  const cells = cellsOf(compared, comparison);
  const points = rows.map(({ policy, estimate }) => ({
    row: policies.indexOf(policy),
    first: policy === baseline,
    value: estimate.value * factor,
    lower: (estimate.lower ?? estimate.value) * factor,
    upper: (estimate.upper ?? estimate.value) * factor,
  }));
  // A row's name stands above its interval, so that a long one takes no width from the scale.
  const names = cells.map(({ policy, verdict }, row) => ({
    row,
    // A long verdict takes its room.
    name: cut(policy, policies.length > 1 ? 32 - Math.max(0, verdict.length - 12) : 42),
    verdict: policies.length > 1 || verdict === 'no value' ? verdict : '',
  }));
  const rule = points.filter(({ first }) => first).map(({ value }) => value);
  const told = cells.map(({ policy, mean, interval, verdict }) =>
    verdict === 'no value' ? `${policy}: no value` : `${policy} ${mean} (${interval}), ${verdict}`,
  );
  const label = { y: 'row', dy: -17, fill: INK, stroke: PAPER, strokeWidth: 4 } as const;
  const options: Options = {
    width: WIDTH,
    height: policies.length * NAMED_ROW + 44,
    marginLeft: 12,
    marginRight: 12,
    marginTop: 0,
    marginBottom: 40,
    x: {
      domain: around(
        points.flatMap(({ lower, upper }) => [lower, upper]),
        unit === '%' ? 100 : Number.POSITIVE_INFINITY,
      ),
      label: unit,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 4,
      grid: true,
    },
    y: {
      domain: policies.map((_, row) => row),
      type: 'band',
      paddingInner: 0.75,
      paddingOuter: 0.6,
      axis: null,
    },
    marks: [
      Plot.ruleX(rule, { stroke: INK, strokeWidth: 0.8, strokeDasharray: '2 3' }),
      Plot.ruleY(points, { y: 'row', x1: 'lower', x2: 'upper', stroke: INK, strokeWidth: 2 }),
      Plot.tickX(points, { y: 'row', x: 'lower', stroke: INK }),
      Plot.tickX(points, { y: 'row', x: 'upper', stroke: INK }),
      Plot.dot(points, {
        y: 'row',
        x: 'value',
        r: 4.5,
        stroke: INK,
        strokeWidth: 1.5,
        fill: (point: { first: boolean }) => (point.first ? PAPER : INK),
      }),
      Plot.text(names, { ...label, text: 'name', frameAnchor: 'left', fontWeight: 600 }),
      Plot.text(names, { ...label, text: 'verdict', frameAnchor: 'right' }),
    ],
  };
  return drawn(options, 'interval', `${headingOf(compared)}, mean and interval. ${told.join('; ')}.`);
}

/** One panel a measure: a row a policy with its mean and interval; a thin rule at the baseline's mean. */
export function intervalCharts(comparison: Comparison): string[] {
  return comparison.measures.map((compared) => intervalPanel(compared, comparison));
}

function statePanel({ stateShares }: Comparison, policy: string, states: readonly State[]): string {
  const stations = Object.entries(stateShares[policy]!);
  const { texts, margin } = labels(stations.map(([station]) => station));
  const segments = stations.flatMap(([, shares], row) => {
    let end = 0;
    return states
      .map((state) => {
        const from = end;
        end += shares[state] * 100;
        const { letter, colour, ink } = STATE_LOOKS[state];
        // A narrow segment has no room for its label; the table gives its number.
        const text = end - from >= 13 ? `${letter} ${Math.round(end - from)}` : end - from >= 5 ? letter : '';
        return { row, from, to: end, middle: (from + end) / 2, colour, ink, text };
      })
      .filter(({ from, to }) => to > from);
  });
  const told = stations.map(
    ([station, shares]) =>
      `${station} ${states.map((state) => `${STATE_LOOKS[state].word} ${percent(shares[state])} %`).join(', ')}`,
  );
  const options: Options = {
    width: WIDTH,
    height: stations.length * ROW + 54,
    marginLeft: margin,
    marginRight: 20,
    marginTop: 6,
    marginBottom: 44,
    x: {
      domain: [0, 100],
      label: '% of the counted time',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: [0, 25, 50, 75, 100],
    },
    y: {
      domain: stations.map((_, row) => row),
      tickFormat: (row: number) => texts[row] ?? '',
      tickSize: 0,
      label: null,
      type: 'band',
      padding: 0.22,
    },
    color: { type: 'identity' },
    marks: [
      Plot.barX(segments, {
        y: 'row',
        x1: 'from',
        x2: 'to',
        fill: 'colour',
        stroke: 'white',
        strokeWidth: 1,
      }),
      // A frame, for a light segment at the end is hardly darker than the paper.
      Plot.barX(stations, {
        y: (_: unknown, row: number) => row,
        x1: 0,
        x2: 100,
        fill: 'none',
        stroke: INK,
        strokeWidth: 0.5,
      }),
      Plot.text(segments, { y: 'row', x: 'middle', text: 'text', fill: 'ink', fontSize: 11 }),
    ],
  };
  return drawn(options, 'state', `What the stations did under ${policy}. ${told.join('; ')}.`);
}

/** One panel a policy: a stacked bar a station, its segments in the order of the states. */
export function stateCharts(comparison: Comparison): { policy: string; svg: string }[] {
  const states = occurring(Object.values(comparison.stateShares));
  return comparison.policies.map((policy) => ({ policy, svg: statePanel(comparison, policy, states) }));
}
