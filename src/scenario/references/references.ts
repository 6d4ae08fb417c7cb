import type { Finding } from '../problem.ts';
import { checkCalendarUse } from './check-calendars.ts';
import { checkCarrier, checkCirculation } from './check-carriers.ts';
import { checkCrew, checkCrewUse } from './check-crew.ts';
import { checkDisturbance } from './check-disturbance.ts';
import { checkFeatures } from './check-features.ts';
import { checkFlow } from './check-flow.ts';
import { checkResponse } from './check-response.ts';
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
  for (const { name, responses } of raw.policies) {
    const retuned = new Set<string>();
    const ahead = new Set<string>();
    for (const [i, response] of responses.entries()) {
      const path = ['policies', name, names.places.get(name)?.[i] ?? i];
      checkResponse(check, response, path);
      if (response.do === 'build-ahead') {
        if (ahead.has(response.at))
          check.say(
            [...path, 'at'],
            `this policy builds ahead at "${response.at}" already; take one of them out`,
          );
        ahead.add(response.at);
      }
      if (response.do !== 'retune') continue;
      if (retuned.has(response.setting)) {
        check.say(
          [...path, 'setting'],
          `this policy retunes "${response.setting}" already; two would undo each other`,
        );
      }
      retuned.add(response.setting);
    }
  }
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
