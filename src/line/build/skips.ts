import { Bypass } from '../skip/bypass.ts';
import { Owed } from '../skip/owed.ts';
import { WayOut } from '../skip/way-out.ts';
import type { Plan } from './plan.ts';

/** The entrances of the stations that a policy may let parts go past, and the way out for those that are done later. */
export function addSkips(plan: Plan): void {
  const { line, scenario } = plan;
  const skips = scenario.policies.flatMap(({ responses }) => responses.filter((it) => it.do === 'skip'));
  const all: Owed[] = [];
  for (const name of new Set(skips.map(({ station }) => station))) {
    const station = plan.station(name);
    const inbox = station.inbox!;
    const later = skips.some((it) => it.station === name && it.later);
    const owed = later ? new Owed(line.parts, inbox) : null;
    if (owed) {
      all.push(owed);
      station.aside = owed;
    }
    line.bypasses.set(name, new Bypass(inbox, owed));
  }
  if (all.length > 0) plan.out = new WayOut(plan.out, all);
}
