import { longestStretch } from '../calendars.ts';
import { partsOf } from '../conditions.ts';
import type { Timing } from '../in-force.ts';
import type { StationSpec } from '../stations.ts';
import { secondsText } from '../units.ts';
import { leastOf } from './bounds.ts';
import type { Checker } from './checker.ts';

/** The calendar of a station, and what it leaves of a cycle. */
export function checkHours(check: Checker, station: StationSpec): void {
  const path = ['stations', station.name];
  if (station.calendar === undefined) {
    if (check.names.given([...path, 'shift-end'])) {
      check.say(
        [...path, 'shift-end'],
        'without a calendar no shift ever ends here; name a "calendar", or take this out',
      );
    }
    return;
  }
  if (!check.known([...path, 'calendar'], station.calendar, check.names.calendars, 'calendar')) return;
  const calendar = check.raw.calendars.find(({ name }) => name === station.calendar);
  if (!calendar || (station.shiftEnd !== 'restarts' && station.shiftEnd !== 'scraps')) return;
  const longest = longestStretch(calendar);
  const shortest = leastOf(station.cycle) / station.speed;
  if (shortest > longest) {
    check.say(
      [...path, 'shift-end'],
      `the shortest cycle takes ${secondsText(shortest)}, but no working time of "${calendar.name}" lasts longer than ${secondsText(longest)}: ` +
        'no cycle would ever end; let it finish or resume',
    );
  }
}

/** Whether every calendar is followed by somebody. The scenario must be whole. */
export function checkCalendarUse(check: Checker): void {
  const { raw } = check;
  const gone = raw.policies.flatMap(({ responses }) =>
    (responses as readonly Timing[]).flatMap(({ when, until }) =>
      [when, until].flatMap((it) => (it === undefined ? [] : partsOf(it))),
    ),
  );
  const used = [...raw.stations, ...raw.crew, ...gone].map((it) =>
    'calendar' in it ? it.calendar : undefined,
  );
  for (const { name } of raw.calendars) {
    if (used.includes(name)) continue;
    check.say(
      ['calendars', name],
      `no station uses it, and no crew; name it under "calendar" of one, or take it out`,
    );
  }
}
