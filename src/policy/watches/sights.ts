import type { Controls } from '../../line/controls.ts';
import type { SightWatch } from '../../scenario/watches.ts';
import type { Watcher } from './watcher.ts';

/** Acts when too many of the last sights went wrong. The window starts empty after that. */
export function watchSights({ at, sees, count, ofLast }: SightWatch, controls: Controls, on: Watcher): void {
  let recent: boolean[] = [];
  let wrongs = 0;
  controls.onSight(at, sees, (wrong) => {
    if (on.deaf()) return;
    recent.push(wrong);
    if (wrong) wrongs++;
    if (recent.length > ofLast && recent.shift()) wrongs--;
    if (wrongs < count) return;
    recent = [];
    wrongs = 0;
    on.act();
  });
}
