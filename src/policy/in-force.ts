import type { Controls, Switch } from '../line/controls.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import { meet } from './condition.ts';

/** Decides when a response is in force: while its condition holds, or all the time where it has none. */
export function putInForce(spec: ResponseSpec, controls: Controls, turn: Switch): void {
  if ('when' in spec) meet(spec.when, controls, turn);
  else turn(true);
}
