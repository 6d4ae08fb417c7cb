import type { StationSpec } from '../stations.ts';
import { checkAssembly } from './check-assembly.ts';
import { checkBreakdowns } from './check-breakdowns.ts';
import { checkHours } from './check-calendars.ts';
import { checkCalls } from './check-calls.ts';
import { checkForming } from './check-forming.ts';
import { checkGauging } from './check-gauging.ts';
import { checkReader } from './check-reader.ts';
import { checkRework } from './check-rework.ts';
import { checkTrimming } from './check-trimming.ts';
import { checkWork } from './check-work.ts';
import type { Checker } from './checker.ts';

const RESERVED = ['good', 'scrap', 'pass'];

/** What a station says of others. */
export function checkStation(check: Checker, station: StationSpec): void {
  const path = ['stations', station.name];
  if (RESERVED.includes(station.name))
    check.say(path, `"${station.name}" has a meaning of its own; give the station another name`);
  checkCalls(check, station);
  checkHours(check, station);
  checkBreakdowns(check, station);
  checkReader(check, station);
  switch (station.does) {
    case 'work':
      return checkWork(check, station, path);
    case 'form':
      return checkForming(check, station, path);
    case 'trim':
      return checkTrimming(check, station, path);
    case 'gauge':
      return checkGauging(check, station, path);
    case 'assemble':
      return checkAssembly(check, station, path);
    case 'rework':
      return checkRework(check, station, path);
  }
}
