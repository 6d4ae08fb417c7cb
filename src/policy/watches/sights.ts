import type { Controls } from '../../line/controls.ts';
import type { SightCondition } from '../../scenario/conditions/sights.ts';
import type { Watcher } from './watcher.ts';

/**
 * Acts when so many of the last sights went wrong, or of so many sights no more than that. The window starts empty
 * after that; what comes back empties it.
 */
export function watchSights(spec: SightCondition, controls: Controls, on: Watcher): () => void {
  const { at, sees, count = Number.POSITIVE_INFINITY, atMost, ofLast } = spec;
  // A ring of the last so many, which begins anew without being emptied.
  const recent: number[] = [];
  let seen = 0;
  let next = 0;
  let wrongs = 0;
  function startAnew(): void {
    seen = 0;
    wrongs = 0;
  }
  controls.onSight(at, sees, (wrong) => {
    if (on.deaf()) return;
    if (seen === ofLast) wrongs -= recent[next]!;
    else seen++;
    recent[next] = wrong ? 1 : 0;
    next = next + 1 === ofLast ? 0 : next + 1;
    if (wrong) wrongs++;
    const few = atMost !== undefined && seen === ofLast && wrongs <= atMost;
    if (wrongs < count && !few) return;
    startAnew();
    on.act();
  });
  return startAnew;
}
