import type { Controls, Switch } from '../../line/controls.ts';
import type { ConditionSpec } from '../../scenario/conditions.ts';
import { meet } from '../condition.ts';

/** Tells whether a condition holds, at once and at each change; at each signal it tells true, and watches anew. */
export function watching(condition: ConditionSpec, controls: Controls, tell: Switch): void {
  const watches: (() => void)[] = [];
  const view = {
    controls,
    deaf: () => false,
    onHeeded: (startAnew: () => void) => void watches.push(startAnew),
    // Such a condition is refused before: a module has no responses that it could name.
    onResponse: () => {},
  };
  const signals = () => {
    for (const startAnew of watches) startAnew();
    tell(true);
  };
  meet(condition, view, { holds: tell, signals });
}
