import type { Controls } from '../../line/controls.ts';
import type { SightCondition } from '../../scenario/conditions/sights.ts';
import type { Watcher } from './watcher.ts';

/**
 * Acts when so many of the last sights went wrong, or of so many sights no more than that. The window starts empty
 * after that; what comes back empties it.
 */
export function watchSights(spec: SightCondition, controls: Controls, on: Watcher): () => void {
  const { at, sees, count = Number.POSITIVE_INFINITY, atMost, ofLast } = spec;
  let recent: boolean[] = [];
  let wrongs = 0;
  function startAnew(): void {
    recent = [];
    wrongs = 0;
  }
  controls.onSight(at, sees, (wrong) => {
    if (on.deaf()) return;
    recent.push(wrong);
    if (wrong) wrongs++;
    if (recent.length > ofLast && recent.shift()) wrongs--;
    const few = atMost !== undefined && recent.length === ofLast && wrongs <= atMost;
    if (wrongs < count && !few) return;
    startAnew();
    on.act();
  });
  return startAnew;
}
