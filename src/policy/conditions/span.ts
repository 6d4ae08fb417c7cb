import type { SpanCondition } from '../../scenario/conditions/time.ts';
import type { Told, View } from './view.ts';

/** Holds from one time of the run to another. */
export function meetSpan({ from, to }: SpanCondition, { controls }: View, { holds }: Told): void {
  holds(from === 0);
  if (from > 0) controls.after(from, () => holds(true));
  if (to !== undefined) controls.after(to, () => holds(false));
}
