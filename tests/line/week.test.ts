import { describe, expect, it } from 'vitest';
import { WEEK, weekOf, workingShare } from '../../src/line/week.ts';
import type { CalendarSpec } from '../../src/scenario/calendars.ts';

type Shift = CalendarSpec['shifts'][number];
const HOUR = 3600;
const DAYS: Shift['days'] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Hours throughout; breaks as [after, lasts]. */
const shift = (
  days: Shift['days'],
  begins: number,
  lasts: number,
  breaks: readonly (readonly [number, number])[] = [],
): Shift => ({
  days: [...days],
  begins: begins * HOUR,
  lasts: lasts * HOUR,
  breaks: breaks.map(([after, rest]) => ({ after: after * HOUR, lasts: rest * HOUR })),
});
const calendar = (...shifts: Shift[]): CalendarSpec => ({ name: 'hours', shifts });
const spans = (spec: CalendarSpec) => weekOf(spec).map(({ from, to }) => [from / HOUR, to / HOUR]);

describe('the working stretches of a week', () => {
  it('are its shifts in order, counted from Monday midnight', () => {
    expect(spans(calendar(shift(['wed', 'mon'], 6, 8)))).toEqual([
      [6, 14],
      [54, 62],
    ]);
  });

  it('are one where shifts touch', () => {
    expect(spans(calendar(shift(['mon'], 14, 8), shift(['mon'], 6, 8)))).toEqual([[6, 22]]);
    expect(spans(calendar(shift(['mon'], 22, 8), shift(['tue'], 6, 8)))).toEqual([[22, 38]]);
  });

  it('are cut by breaks, given in any order', () => {
    expect(
      spans(
        calendar(
          shift(['mon'], 6, 8, [
            [5, 0.5],
            [2, 1],
          ]),
        ),
      ),
    ).toEqual([
      [6, 8],
      [9, 11],
      [11.5, 14],
    ]);
  });

  it('leave out nothing and add nothing where breaks stand at the ends or side by side', () => {
    const breaks = [
      [0, 1],
      [3, 1],
      [4, 1],
      [7, 1],
    ] as const;
    expect(spans(calendar(shift(['mon'], 6, 8, breaks)))).toEqual([
      [7, 9],
      [11, 13],
    ]);
  });

  it('go on at the beginning of the week where they run over its end', () => {
    expect(spans(calendar(shift(['sun'], 22, 8)))).toEqual([
      [0, 6],
      [166, 168],
    ]);
    // The break is over the end: Sunday 23 h to Monday 1 h.
    expect(spans(calendar(shift(['sun'], 22, 8, [[1, 2]])))).toEqual([
      [1, 6],
      [166, 167],
    ]);
    // A stretch wholly in the new week.
    expect(spans(calendar(shift(['sun'], 22, 8, [[0, 3]])))).toEqual([[1, 6]]);
    // Joined with the shift that begins there.
    expect(spans(calendar(shift(['sun'], 22, 8), shift(['mon'], 6, 8)))).toEqual([
      [0, 14],
      [166, 168],
    ]);
  });

  it('of shifts round the clock are the whole week', () => {
    expect(weekOf(calendar(shift(DAYS, 6, 24)))).toEqual([{ from: 0, to: WEEK }]);
    expect(weekOf(calendar(shift(DAYS, 6, 8), shift(DAYS, 14, 8), shift(DAYS, 22, 8)))).toEqual([
      { from: 0, to: WEEK },
    ]);
  });

  it('give the share of time at work', () => {
    expect(workingShare(calendar(shift(DAYS, 0, 24)))).toBe(1);
    expect(workingShare(calendar(shift(DAYS.slice(0, 5), 6, 8, [[3, 0.5]])))).toBeCloseTo(37.5 / 168, 12);
    expect(workingShare(calendar(shift(['sun'], 22, 8)))).toBeCloseTo(8 / 168, 12);
  });
});
