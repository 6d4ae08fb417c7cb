import type { StationSpec } from '../stations.ts';
import { callsOf } from './calls.ts';
import type { Checker } from './checker.ts';

/** Whether the crews a station calls are there, and go by the priorities it gives. */
export function checkCalls(check: Checker, station: StationSpec): void {
  for (const { path, key, crew } of callsOf(station)) {
    const given = check.names.given([...path, 'priority']);
    if (crew === undefined) {
      if (given) {
        check.say(
          [...path, 'priority'],
          `without "${key}" no crew is called, so a priority has no effect; take it out, or say who does it`,
        );
      }
      continue;
    }
    if (!check.known([...path, key], crew, check.names.crew, 'crew')) continue;
    const serves = check.raw.crew.find(({ name }) => name === crew)?.serves;
    if (given && serves !== undefined && serves !== 'priority') {
      check.say(
        [...path, 'priority'],
        `"${crew}" serves ${serves}, so a priority has no effect; take it out, or let the crew serve by priority`,
      );
    }
  }
}
