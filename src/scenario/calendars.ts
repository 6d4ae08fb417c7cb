import { z } from 'zod';
import { duration, entry, positiveDuration, word } from './fields.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

/** The days of the week, from the one a run starts on. */
const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

const pause = entry({
  after: duration.describe('time from the beginning of the shift'),
  lasts: positiveDuration,
});

type Say = (message: string, ...path: PropertyKey[]) => void;

const sayIn =
  (context: z.RefinementCtx): Say =>
  (message, ...path) =>
    context.addIssue({ code: 'custom', message, path });

/** Clock times are written in several units and added in binary; a microsecond is no overlap. */
const GRAIN = 1e-6;

interface Shift {
  readonly days: readonly (typeof DAYS)[number][];
  readonly begins: number;
  readonly lasts: number;
  readonly breaks: readonly { readonly after: number; readonly lasts: number }[];
}

function checkBreaks({ lasts, breaks }: Shift, say: Say): void {
  const inOrder = [...breaks.entries()].sort(([, a], [, b]) => a.after - b.after);
  let over = 0;
  let worked = lasts;
  for (const [i, pause] of inOrder) {
    if (pause.after + pause.lasts > lasts + GRAIN)
      return say('this break ends after its shift; let it lie within', 'breaks', i);
    if (pause.after < over - GRAIN)
      return say('this break begins before another is over; make them one', 'breaks', i);
    over = pause.after + pause.lasts;
    worked -= pause.lasts;
  }
  if (worked <= GRAIN)
    say('the breaks leave nothing of the shift; shorten them, or take the shift out', 'breaks');
}

const shift = entry({
  days: z
    .array(word(DAYS), { error: `expected a list of days out of ${DAYS.join(', ')}` })
    .min(1, { error: 'expected at least one day' })
    .superRefine((given, context) => {
      for (const [i, day] of given.entries())
        if (given.indexOf(day) < i) sayIn(context)(`"${day}" is listed twice; keep one of the two`, i);
    })
    .describe('the days it begins on'),
  begins: duration
    .refine((begins) => begins < DAY, { error: 'a day has 24 h; expected a time from midnight below that' })
    .describe('counted from midnight'),
  lasts: positiveDuration
    .refine((lasts) => lasts <= DAY, { error: 'a shift lasts at most 24 h; a longer time is several shifts' })
    .describe('may run past midnight'),
  breaks: z
    .array(pause, { error: 'expected a list of breaks' })
    .optional()
    .transform((given) => given ?? []),
}).superRefine((given, context) => checkBreaks(given, sayIn(context)));

/** The shifts of one week in order, each with its place in the list; the first comes once more, a week later. */
function weekOf(shifts: readonly Shift[]) {
  const spans = shifts
    .flatMap(({ days, begins, lasts }, i) =>
      days.map((day) => {
        const from = DAYS.indexOf(day) * DAY + begins;
        return { i, from, to: from + lasts };
      }),
    )
    .sort((a, b) => a.from - b.from);
  const { from, to, ...first } = spans[0]!;
  return [...spans, { ...first, from: from + WEEK, to: to + WEEK }];
}

/** Day and time of day of a time since the beginning of the week, such as `mon 06:30`. */
function clockText(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const two = (value: number) => String(value).padStart(2, '0');
  const day = DAYS[Math.floor(minutes / (24 * 60)) % DAYS.length];
  return `${day} ${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
}

function checkShifts(shifts: readonly Shift[], say: Say): void {
  const told = new Set<number>();
  const week = weekOf(shifts);
  for (const [k, next] of week.entries()) {
    const before = week[k - 1];
    if (!before || before.to <= next.from + GRAIN) continue;
    const i = Math.max(before.i, next.i);
    if (told.has(i)) continue;
    told.add(i);
    say(
      `shifts overlap: one lasts from ${clockText(before.from)} to ${clockText(before.to)}, but the next begins at ${clockText(next.from)}; shorten it, or let the other begin later`,
      'shifts',
      i,
    );
  }
}

const SHIFTS = 'expected a list with at least one shift; without a calendar a station always works';

/** When a station or a crew works, week after week. A run starts on Monday at midnight. */
export const calendar = entry({
  shifts: z.array(shift, { error: SHIFTS }).min(1, { error: SHIFTS }),
}).superRefine(({ shifts }, context) => checkShifts(shifts, sayIn(context)));

export type CalendarSpec = z.output<typeof calendar> & { readonly name: string };

/** The longest time in seconds without a break or the end of work; infinite when neither ever comes. */
export function longestStretch({ shifts }: Pick<CalendarSpec, 'shifts'>): number {
  const week = weekOf(shifts).slice(0, -1);
  const pieces = week.flatMap(({ i, from, to }) => {
    const breaks = [...shifts[i]!.breaks].sort((a, b) => a.after - b.after);
    const begins = [from, ...breaks.map(({ after, lasts }) => from + after + lasts)];
    const ends = [...breaks.map(({ after }) => from + after), to];
    return begins.map((begin, k) => ({ begin, end: ends[k]! })).filter(({ begin, end }) => end > begin);
  });
  // A stretch may run over the end of the week, so the week is walked twice.
  const twice = [...pieces, ...pieces.map(({ begin, end }) => ({ begin: begin + WEEK, end: end + WEEK }))];
  let longest = 0;
  let since = twice[0]!.begin;
  for (const [k, { begin, end }] of twice.entries()) {
    if (k > 0 && begin > twice[k - 1]!.end + GRAIN) since = begin;
    longest = Math.max(longest, end - since);
  }
  return longest > WEEK ? Number.POSITIVE_INFINITY : longest;
}
