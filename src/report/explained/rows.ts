import type { Compared } from '../../experiment/judge.ts';
import type { Contribution } from '../../line/prediction/model.ts';
import { percentLevel } from '../cells.ts';
import { cut, padLeft, padRight, printable, wrap } from '../columns.ts';
import { fixed, percent } from '../format.ts';
import { type ExplainedCells, explainedCells } from './cells.ts';

/** Columns of the table at its full width; a narrower terminal goes without the interval. */
const FULL = 80;
const NUMBER = 11;
const INTERVAL = 22;
const MARK = 2;
/** A share below this, which no run showed either, is not worth a row. */
const NEVER = 5e-7;

function line({ label, predicted, simulated, interval, mark }: ExplainedCells, width: number): string {
  const numbers = padLeft(predicted, NUMBER) + padLeft(simulated, NUMBER);
  const tail = (width >= FULL ? padLeft(interval, INTERVAL) : '') + (mark && ` ${mark}`);
  const room = width - 2 * NUMBER - (width >= FULL ? INTERVAL : 0) - MARK;
  return padRight(cut(printable(label), room - 1), room) + numbers + tail;
}

export function heading(label: string, shown: number, width: number): string {
  const interval = `${percentLevel(shown)} % interval`;
  return line({ label, predicted: 'predicted', simulated: 'simulated', interval, mark: '' }, width);
}

export const row = (label: string, compared: Compared, width: number, factor = 1): string =>
  line(explainedCells(`    ${label}`, compared, factor), width);

/** A row of a share, shown in %. */
export const shareRow = (label: string, compared: Compared, width: number): string =>
  row(`${label}, %`, compared, width, 100);

/** The same, left out where it is nothing and never came up. */
export function shareRowIfAny(label: string, compared: Compared | null, width: number): string[] {
  if (compared === null || ((compared.predicted ?? 0) < NEVER && !compared.simulated?.value)) return [];
  return [shareRow(label, compared, width)];
}

/** Text below a table's row, as far in as the rows. */
export const note = (text: string, width: number): string[] =>
  wrap(printable(text), width - 4, '  ').map((it) => `    ${it}`);

/** The name of a thing and what is known of it. */
export const title = (text: string, width: number): string[] =>
  wrap(printable(text), width - 2, '  ').map((it) => `  ${it}`);

/** mm, with no more digits than it has. */
export const size = (value: number): string => `${fixed(value, 6).replace(/\.?0+$/, '')} mm`;

/** Sources of less than this share are only counted. */
const LEAST_TOLD = 0.001;

export function fromText(from: readonly Contribution[]): string {
  const sum = from.reduce((total, { variance }) => total + variance, 0);
  if (sum === 0) return 'does not vary';
  const told = from.filter(({ variance }) => variance / sum >= LEAST_TOLD);
  const shares = told.map(({ name, variance }) => `${name} ${percent(variance / sum)} %`);
  const rest = from.length - told.length;
  return `variance from: ${shares.join(', ')}${rest > 0 ? ` and, below 0.1 %, ${rest} more` : ''}`;
}
