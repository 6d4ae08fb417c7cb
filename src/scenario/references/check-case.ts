import type { CaseSpec } from '../scenario.ts';
import type { Checker } from './checker.ts';

/** Whether the disturbances of a case are there, each once. */
export function checkCase(check: Checker, { name, disturbances }: CaseSpec): void {
  for (const [i, disturbance] of disturbances.entries()) {
    const path = ['cases', name, i];
    if (!check.known(path, disturbance, check.names.disturbances, 'disturbance')) continue;
    if (disturbances.indexOf(disturbance) < i) check.say(path, `"${disturbance}" is in this case already`);
  }
}
