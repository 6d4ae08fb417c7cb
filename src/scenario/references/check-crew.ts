import type { CrewSpec } from '../crew.ts';
import { callsOf } from './calls.ts';
import type { Checker } from './checker.ts';

/** Whether what a crew says of calendars and stations holds. */
export function checkCrew(check: Checker, { name, calendar, moves }: CrewSpec): void {
  const path = ['crew', name];
  if (calendar !== undefined) check.known([...path, 'calendar'], calendar, check.names.calendars, 'calendar');
  const pairs = new Set<string>();
  for (const [i, { between }] of moves.entries()) {
    const at = [...path, 'moves', i, 'between'];
    const known = between.map((station, side) =>
      check.known([...at, side], station, check.names.stations, 'station'),
    );
    if (!known.every(Boolean)) continue;
    const [one, other] = between;
    if (one === other) {
      check.say(at, `a move goes between two stations, not from "${one}" to itself`);
      continue;
    }
    const pair = [...between].sort().join('/');
    if (pairs.has(pair))
      check.say(
        at,
        `the move between "${one}" and "${other}" is listed already; it takes as long either way`,
      );
    pairs.add(pair);
  }
}

/** Whether every crew is called by somebody, and goes only where it is called. The scenario must be whole. */
export function checkCrewUse(check: Checker): void {
  for (const { name, moves } of check.raw.crew) {
    const callers = check.raw.stations
      .filter((station) => callsOf(station).some(({ crew }) => crew === name))
      .map((station) => station.name);
    if (callers.length === 0) {
      check.say(
        ['crew', name],
        `no station uses it; name it under "crew" of a breakdown or set-up, or under "by" of a handling, or take it out`,
      );
      continue;
    }
    for (const [i, { between }] of moves.entries()) {
      for (const [side, station] of between.entries()) {
        if (callers.includes(station)) continue;
        check.say(
          ['crew', name, 'moves', i, 'between', side],
          `"${station}" never calls "${name}", so it is never moved there; it is called by ${callers.join(', ')}`,
        );
      }
    }
  }
}
