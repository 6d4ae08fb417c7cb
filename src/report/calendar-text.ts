import type { CalendarSpec } from '../scenario/calendars.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { counted, listed } from './words.ts';

const DAY = 24 * 3600;
/** In the order of the week. */
const DAYS: readonly CalendarSpec['shifts'][number]['days'][number][] = [
  'mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun',
]; // biome-ignore format: one line reads better

/** Seconds from a midnight as `06:00`; the end of a day is `24:00`. */
function clock(seconds: number): string {
  const within = seconds === DAY ? DAY : seconds % DAY;
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
  const odd = within % 60;
  return `${two(within / 3600)}:${two((within / 60) % 60)}${odd > 0 ? `:${two(odd)}` : ''}`;
}

/** `mon-fri, sun`: three days and more in a row are a stretch. */
function daysText(days: CalendarSpec['shifts'][number]['days']): string {
  const stretches: number[][] = [];
  for (const [i, day] of DAYS.entries()) {
    if (!days.includes(day)) continue;
    const last = stretches.at(-1);
    if (last?.at(-1) === i - 1) last.push(i);
    else stretches.push([i]);
  }
  return stretches
    .flatMap((them) =>
      them.length > 2 ? [`${DAYS[them[0]!]}-${DAYS[them.at(-1)!]}`] : them.map((i) => DAYS[i]!),
    )
    .join(', ');
}

/** The shifts of a calendar: `mon-fri 06:00-14:00, break 09:00-09:15`. */
export function shiftsText({ shifts }: CalendarSpec): string {
  return shifts
    .map(({ days, begins, lasts, breaks }) => {
      const rests = breaks.map(
        ({ after, lasts: long }) => `, break ${clock(begins + after)}-${clock(begins + after + long)}`,
      );
      return `${daysText(days)} ${clock(begins)}-${clock(begins + lasts)}${rests.join('')}`;
    })
    .join('; ');
}

/** Each calendar with who works by it. */
export function calendarTexts({ calendars, stations, crew }: Scenario): string[] {
  return calendars.map((calendar) => {
    const by = [...stations, ...crew].filter((it) => it.calendar === calendar.name);
    const who = by.length === 0 ? 'nobody works by it' : `for ${listed(by.map(({ name }) => `"${name}"`))}`;
    return `"${calendar.name}" (${counted(calendar.shifts.length, 'shift')}): ${shiftsText(calendar)}; ${who}`;
  });
}
