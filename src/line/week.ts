import type { CalendarSpec } from '../scenario/calendars.ts';

const DAY = 24 * 3600;
const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
/** Seconds in a week. A run begins on Monday at midnight. */
export const WEEK = 7 * DAY;

/** Stretches this near each other, s, are one: hours such as 6.1 and 8 do not add up exactly. */
const TOUCHING = 1e-6;

/** A stretch of work, s from the beginning of the week. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Cut where they run past the end of the week, the rest standing at its beginning. */
function withinWeek({ from, to }: Span): Span[] {
  if (Math.abs(to - WEEK) <= TOUCHING) return [{ from, to: WEEK }];
  if (to < WEEK) return [{ from, to }];
  if (from >= WEEK) return [{ from: from - WEEK, to: to - WEEK }];
  return [
    { from, to: WEEK },
    { from: 0, to: to - WEEK },
  ];
}

/** The working stretches of a calendar's week in order, those that touch being one. */
export function weekOf(spec: CalendarSpec): readonly Span[] {
  const pieces = spec.shifts.flatMap(({ days, begins, lasts, breaks }) =>
    days.flatMap((day) => {
      const start = DAYS.indexOf(day) * DAY + begins;
      const rests = [...breaks].sort((a, b) => a.after - b.after);
      const from = [0, ...rests.map((rest) => rest.after + rest.lasts)];
      const to = [...rests.map((rest) => rest.after), lasts];
      return from.map((first, i) => ({ from: start + first, to: start + to[i]! }));
    }),
  );
  const ordered = pieces
    .flatMap(withinWeek)
    .filter(({ from, to }) => to > from)
    .sort((a, b) => a.from - b.from);
  const merged: { from: number; to: number }[] = [];
  for (const { from, to } of ordered) {
    const last = merged.at(-1);
    if (last && from <= last.to + TOUCHING) last.to = Math.max(last.to, to);
    else merged.push({ from, to });
  }
  return merged;
}

/** Share of the time that a calendar works. */
export function workingShare(spec: CalendarSpec): number {
  return weekOf(spec).reduce((sum, { from, to }) => sum + to - from, 0) / WEEK;
}
