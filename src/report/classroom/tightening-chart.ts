import type { Estimate } from '../../statistics/estimate.ts';
import { escapeHtml } from '../escape.ts';
import { decimalsFor, fixed } from '../format.ts';

/** What the chart shows of one measure, all in the unit it is shown in. */
interface Tightening {
  /** The estimate after so many runs, from the second on. */
  readonly estimates: readonly Estimate[];
  readonly factor: number;
  /** What theory expects, in the unit of the engine; null before it is revealed and where there is none. */
  readonly expected: number | null;
  /** Runs that there will be. */
  readonly most: number;
  readonly width: number;
  /** For who cannot see it. */
  readonly label: string;
}

const HEIGHT = 240;
const MARGIN = { left: 58, right: 14, top: 14, bottom: 40 };
/** Intervals of fewer runs are wider than all that matters; they are cut off at the edge. */
const SETTLED = 4;
const TICKS = 5;

/** Round numbers from one end to the other. */
function ticksOf(low: number, high: number): { at: number[]; decimals: number } {
  const raw = (high - low) / TICKS;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= raw) ?? 10);
  const first = Math.ceil(low / step);
  const last = Math.floor(high / step + 1e-9);
  const at = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return { at, decimals: Math.max(0, decimalsFor(step * 2)) };
}

function rangeOf({ estimates, factor, expected }: Tightening): [number, number] {
  const settled = estimates.filter(({ runs }) => runs >= SETTLED);
  const shown = (settled.length > 0 ? settled : estimates).flatMap(({ value, lower, upper }) => [
    lower ?? value,
    upper ?? value,
  ]);
  const values = [...shown, ...(expected === null ? [] : [expected])].map((value) => value * factor);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = (high - low) * 0.08 || Math.max(Math.abs(high) * 0.05, 0.5);
  return [Math.max(low - air, low >= 0 ? 0 : Number.NEGATIVE_INFINITY), high + air];
}

/** How the interval of one measure grows tighter with each run, as a picture. */
export function tighteningChart(tightening: Tightening): string {
  const { estimates, factor, expected, most, width, label } = tightening;
  const [low, high] = rangeOf(tightening);
  const [right, bottom] = [width - MARGIN.right, HEIGHT - MARGIN.bottom];
  const x = (runs: number) =>
    (MARGIN.left + 8 + ((runs - 2) / Math.max(1, most - 2)) * (right - MARGIN.left - 16)).toFixed(1);
  const y = (value: number) =>
    (bottom - ((Math.min(Math.max(value, low), high) - low) / (high - low)) * (bottom - MARGIN.top)).toFixed(
      1,
    );
  const { at, decimals } = ticksOf(low, high);
  const rules = at.map(
    (value) =>
      `<line x1="${MARGIN.left}" x2="${right}" y1="${y(value)}" y2="${y(value)}" stroke="#dcd9cf"/>` +
      `<text x="${MARGIN.left - 8}" y="${y(value)}" dy="0.35em" text-anchor="end">${fixed(value, decimals)}</text>`,
  );
  const counts = [
    2,
    ...[1, 2, 3, 4, 5, 6].map((i) => Math.round((most * i) / 6)).filter((count) => count > 3),
  ];
  const below = counts.map(
    (count) => `<text x="${x(count)}" y="${bottom + 17}" text-anchor="middle">${count}</text>`,
  );
  const bars = estimates.map(({ runs, value, lower, upper }) => {
    const [from, to] = [(lower ?? value) * factor, (upper ?? value) * factor];
    return (
      `<line x1="${x(runs)}" x2="${x(runs)}" y1="${y(from)}" y2="${y(to)}" stroke="#7d97b3" stroke-width="3"/>` +
      `<circle cx="${x(runs)}" cy="${y(value * factor)}" r="3" fill="#1d2326"/>`
    );
  });
  const theory =
    expected === null
      ? ''
      : `<line class="expected" x1="${MARGIN.left}" x2="${right}" y1="${y(expected * factor)}" y2="${y(expected * factor)}" ` +
        `stroke="#9a4f0c" stroke-width="2" stroke-dasharray="7 4"/>`;
  return (
    `<svg role="img" aria-label="${escapeHtml(label)}" viewBox="0 0 ${width} ${HEIGHT}" width="${width}" height="${HEIGHT}" ` +
    `style="max-width:100%;height:auto;font-size:12px" fill="currentColor">${rules.join('')}${bars.join('')}${theory}` +
    `<line x1="${MARGIN.left}" x2="${right}" y1="${bottom}" y2="${bottom}" stroke="currentColor"/>${below.join('')}` +
    `<text x="${right}" y="${HEIGHT - 4}" text-anchor="end">runs so far</text></svg>`
  );
}
