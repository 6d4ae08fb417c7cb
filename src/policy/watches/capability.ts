import type { Controls } from '../../line/controls.ts';
import type { CapabilityWatch } from '../../scenario/watches.ts';
import { capabilityInterval, capabilityOf } from '../../statistics/capability.ts';
import { ReadingSums } from '../../statistics/reading-sums.ts';
import type { Watcher } from './watcher.ts';

/**
 * Acts when the capability of the last so many readings is too low; with `surely`, when even its one-sided upper
 * confidence limit is. The window starts empty after that. Readings without any spread have no capability.
 */
export function watchCapability(spec: CapabilityWatch, controls: Controls, on: Watcher): void {
  const { at, of, capability, below, ofLast, surely } = spec;
  const { aim, limits } = controls.drawn(of);
  let recent: number[] = [];

  function low(): boolean {
    const sums = new ReadingSums();
    for (const value of recent) sums.add(value - aim);
    const found = capabilityOf(sums.moments(aim), limits!)[capability];
    if (found === null) return false;
    // Two tails of a two-sided interval, of which the upper one counts.
    const most =
      surely === undefined ? found : capabilityInterval(capability, found, ofLast, 2 * surely - 1).upper;
    return most < below;
  }

  controls.onReadingAt(at, of, (value) => {
    if (on.deaf()) return;
    recent.push(value);
    if (recent.length > ofLast) recent.shift();
    if (recent.length < ofLast || !low()) return;
    recent = [];
    on.act();
  });
}
