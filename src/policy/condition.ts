import type { Controls } from '../line/controls.ts';
import type { ConditionSpec } from '../scenario/conditions.ts';

/** Tells whether a condition holds: at once, and whenever that changes. */
export function meet(condition: ConditionSpec, controls: Controls, tell: (holds: boolean) => void): void {
  controls.onLevel(condition, tell);
}
