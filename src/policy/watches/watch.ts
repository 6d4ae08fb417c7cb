import type { Controls } from '../../line/controls.ts';
import type { WatchCondition } from '../../scenario/conditions.ts';
import type { ResponseOf } from '../../scenario/responses.ts';
import { isChart, isSights } from '../../scenario/watches.ts';
import { watchCapability } from './capability.ts';
import { watchChart } from './chart.ts';
import { watchSights } from './sights.ts';
import type { Watcher } from './watcher.ts';

type Spec = ResponseOf<'stop-and-fix'>['watch'];

/** Lets a response be called by what it watches; what comes back lets the watch start anew. */
export function watch(spec: WatchCondition, controls: Controls, watcher: Watcher): () => void {
  if ('sees' in spec) return watchSights(spec, controls, watcher);
  return isChart(spec) ? watchChart(spec, controls, watcher) : watchCapability(spec, controls, watcher);
}

/** A name of what is watched, for streams of the response's own. */
export function nameOf(spec: Spec): string {
  if (isSights(spec)) return `${spec.at}/${spec.sees}`;
  return `${spec.at}/${spec.of}/${isChart(spec) ? spec.chart : spec.capability}`;
}
