import type { Finding } from '../problem.ts';
import { checkBounds } from './check-bound.ts';
import { checkCalendarUse } from './check-calendars.ts';
import { checkCarrier, checkCirculation } from './check-carriers.ts';
import { checkCase } from './check-case.ts';
import { checkCrew, checkCrewUse } from './check-crew.ts';
import { checkDisturbance } from './check-disturbance.ts';
import { checkFeatures } from './check-features.ts';
import { checkFlow } from './check-flow.ts';
import { checkPolicy } from './check-policy.ts';
import { checkCorrections } from './check-rework.ts';
import { checkPriorities, checkRoutes } from './check-routes.ts';
import { checkStandIns } from './check-stand-ins.ts';
import { checkStation } from './check-station.ts';
import { checkStock } from './check-stock.ts';
import { Checker, type Names, type Raw } from './checker.ts';

/**
 * What the entries of a scenario say of each other and do not hold.
 * @param whole whether nothing was left out of `raw`; only then can the flow be judged
 */
export function crossReferences(raw: Raw, names: Names, whole: boolean): Finding[] {
  const check = new Checker(raw, names);
  for (const station of raw.stations) checkStation(check, station);
  for (const name of names.next.keys()) checkRoutes(check, name);
  for (const crew of raw.crew) checkCrew(check, crew);
  for (const carrier of raw.carriers) checkCarrier(check, carrier);
  checkFeatures(check);
  checkStandIns(check);
  for (const it of raw.disturbances ?? []) checkDisturbance(check, it);
  for (const it of raw.cases ?? []) checkCase(check, it);
  for (const policy of raw.policies) checkPolicy(check, policy);
  checkBounds(check, raw.policies, whole);
  // With a wrong name on the way, neither the flow nor the use of things is what it was meant to be.
  if (whole && check.found.length === 0) {
    checkFlow(check);
    checkCorrections(check);
    for (const stock of raw.stock) checkStock(check, stock);
    checkPriorities(check);
    checkCirculation(check);
    checkCrewUse(check);
    checkCalendarUse(check);
  }
  return check.found;
}
