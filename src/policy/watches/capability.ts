import type { Controls } from '../../line/controls.ts';
import type { CapabilityWatch } from '../../scenario/watches.ts';
import { capabilityIntervals, capabilityOf } from '../../statistics/capability.ts';
import { ReadingWindow } from '../../statistics/reading-window.ts';
import type { Watcher } from './watcher.ts';

/**
 * Acts when the capability of the last so many readings is too low; with `surely`, when even its one-sided upper
 * confidence limit is. The window starts empty after that; what comes back empties it.
 * Readings without any spread have no capability.
 */
export function watchCapability(spec: CapabilityWatch, controls: Controls, on: Watcher): () => void {
  const { at, of, capability, below, ofLast, surely } = spec;
  const { aim, limits } = controls.drawn(of);
  const recent = new ReadingWindow(ofLast);
  // Of the two tails of a two-sided interval the upper one counts.
  const interval = surely === undefined ? null : capabilityIntervals(capability, ofLast, 2 * surely - 1);

  function low(): boolean {
    const found = capabilityOf(recent.moments(aim), limits!)[capability];
    if (found === null) return false;
    return (interval === null ? found : interval(found).upper) < below;
  }

  controls.onReadingAt(at, of, (value) => {
    if (on.deaf()) return;
    recent.add(value - aim);
    if (!recent.full || !low()) return;
    recent.empty();
    on.act();
  });
  return () => recent.empty();
}
