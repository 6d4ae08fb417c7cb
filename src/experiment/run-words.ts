import { changeText } from '../scenario/changed.ts';
import type { Task } from './worker.ts';

/** What messages call a run, without its seed. */
export function runOf({ policy, variant }: Task): string {
  const { disturbed = true, case: of, severity, changes = [] } = variant ?? {};
  const when = of === undefined ? '' : ` in case "${of}"`;
  const how = severity === undefined ? '' : ` at severity ${severity}`;
  const given = changes.map(changeText);
  const where = given.length > 0 ? ` with ${given.join(', ')}` : '';
  return `${disturbed ? 'the run' : 'the undisturbed run'} of policy "${policy}"${when}${how}${where}`;
}
