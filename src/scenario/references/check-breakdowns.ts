import type { StationSpec } from '../stations.ts';
import { secondsText } from '../units.ts';
import { leastOf, mostOf } from './bounds.ts';
import type { Checker } from './checker.ts';

/** Whether the spares are there, and a cycle that must start anew after a breakdown ever gets to its end. */
export function checkBreakdowns(check: Checker, station: StationSpec): void {
  for (const key of ['setUps', 'maintenance'] as const)
    for (const { name, spare } of station[key]) {
      const path = ['stations', station.name, key === 'setUps' ? 'set-ups' : key, name, 'spare'];
      if (spare !== undefined) check.known(path, spare, check.names.stock, 'stock');
    }
  const shortest = leastOf(station.cycle) / station.speed;
  for (const { name, every, cycle, spare } of station.breakdowns) {
    const path = ['stations', station.name, 'breakdowns', name];
    if (spare !== undefined) check.known([...path, 'spare'], spare, check.names.stock, 'stock');
    const latest = mostOf(every);
    if (cycle === 'resumes' || latest >= shortest) continue;
    check.say(
      [...path, 'cycle'],
      `it breaks down after ${secondsText(latest)} at the latest, but the shortest cycle takes ${secondsText(shortest)}: ` +
        'no cycle would ever end; let it resume, or let "every" be longer',
    );
  }
}
