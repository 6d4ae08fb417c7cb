import type { Effects, FactorEffect } from '../../experiment/varied/effects.ts';
import type { LevelMean } from '../../experiment/varied/level-means.ts';
import type { Varied } from '../../experiment/varied/varied.ts';
import { formatOf } from '../format.ts';
import { sideOf, togetherText } from './varied-words.ts';

/** A column of text, its first one naming the rows. */
export interface TextColumn {
  readonly heading: string;
  readonly side: 'left' | 'right';
  readonly cells: readonly string[];
}

const share = '95 % interval';

/** The effects, a row each. */
export function effectColumns(varied: Varied, rows: readonly FactorEffect[]): TextColumn[] {
  const format = formatOf({
    measure: varied.measure,
    rows: rows.map(({ effect }) => ({ estimate: effect, difference: effect })),
  });
  return [
    { heading: 'of', side: 'left', cells: rows.map((row) => togetherText(varied, row)) },
    { heading: 'effect', side: 'right', cells: rows.map(({ effect }) => format.signed(effect.value)) },
    { heading: share, side: 'right', cells: rows.map(({ effect }) => format.interval(effect)) },
    { heading: 'surely', side: 'left', cells: rows.map(({ effect }) => sideOf(effect)) },
  ];
}

type Screened = Extract<Effects, { kind: 'screened' }>['rows'];

/** Factors by the size of what they do, the largest first. */
const bySize = (rows: Screened): number[] =>
  rows.map((_, i) => i).sort((a, b) => rows[b]!.size.value - rows[a]!.size.value || a - b);

/** What screening tells, a row a factor. */
export function screenedColumns(varied: Varied, rows: Screened): TextColumn[] {
  const order = bySize(rows);
  const { measure } = varied;
  const format = formatOf({
    measure,
    rows: rows.flatMap(({ size, mean }) => [{ estimate: size }, { estimate: mean }]),
  });
  const told = (matters: boolean | null) => (matters === null ? 'not told' : matters ? 'yes' : 'no');
  const column = (heading: string, of: (row: Screened[number]) => string): TextColumn => ({
    heading,
    side: 'right',
    cells: order.map((i) => of(rows[i]!)),
  });
  return [
    { heading: 'of', side: 'left', cells: order.map((i) => varied.factors[i]!.name) },
    column('size', ({ size }) => format.value(size.value)),
    column(share, ({ size }) => format.interval(size)),
    column('effect', ({ mean }) => format.signed(mean.value)),
    column(share, ({ mean }) => format.interval(mean)),
    column('spread', ({ spread }) => (spread === null ? 'not told' : format.value(spread))),
    { heading: 'matters', side: 'left', cells: order.map((i) => told(rows[i]!.matters)) },
  ];
}

/** Means by values, a row each. */
export function meanColumns(varied: Varied, means: readonly LevelMean[]): TextColumn[] {
  const format = formatOf({ measure: varied.measure, rows: means });
  const named = ({ at }: LevelMean) => ({
    factors: at.map(({ factor }) => factor),
    levels: at.map(({ level }) => level),
  });
  return [
    { heading: 'with', side: 'left', cells: means.map((own) => togetherText(varied, named(own))) },
    { heading: 'mean', side: 'right', cells: means.map(({ estimate }) => format.value(estimate.value)) },
    { heading: share, side: 'right', cells: means.map(({ estimate }) => format.interval(estimate)) },
  ];
}

/** Points by their mean, the best first; those without a value last. */
export function byGoodness({ estimates, measure }: Varied): number[] {
  const sign = measure.better === 'higher' ? -1 : 1;
  const key = (i: number) => (estimates[i] ? sign * estimates[i].value : Number.POSITIVE_INFINITY);
  const compared = (a: number, b: number) => (key(a) === key(b) ? a - b : key(a) - key(b));
  return estimates.map((_, i) => i).sort(compared);
}

/** Settings with their means, a row each. */
export function pointColumns(varied: Varied, points: readonly number[]): TextColumn[] {
  const { factors, design, estimates, measure } = varied;
  const given = points.flatMap((i) => (estimates[i] ? [{ estimate: estimates[i] }] : []));
  const format = formatOf({ measure, rows: given });
  return [
    { heading: 'setting', side: 'left', cells: points.map((i) => String(i + 1)) },
    ...factors.map(
      ({ name }, f): TextColumn => ({
        heading: name,
        side: 'right',
        cells: points.map((i) => design.points[i]![f]!.words),
      }),
    ),
    {
      heading: 'mean',
      side: 'right',
      cells: points.map((i) => (estimates[i] ? format.value(estimates[i].value) : 'no value')),
    },
    {
      heading: share,
      side: 'right',
      cells: points.map((i) => (estimates[i] ? format.interval(estimates[i]) : '')),
    },
  ];
}
