import type { WatchCondition } from '../../scenario/conditions.ts';
import { watch } from '../watches/watch.ts';
import type { Told, View } from './view.ts';

/** Signals when what is watched calls for it. */
export function meetWatched(condition: WatchCondition, view: View, { holds, signals }: Told): void {
  const { controls, deaf, onHeeded } = view;
  holds(false);
  // Whoever reads or assembles is not done yet, so it is told by way of the calendar.
  onHeeded(watch(condition, controls, { deaf, act: () => controls.after(0, signals) }));
}
