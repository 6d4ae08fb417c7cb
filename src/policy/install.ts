import type { Controls, Switch } from '../line/controls.ts';
import type { ResponseOf, ResponseSpec } from '../scenario/responses.ts';

/**
 * Puts one response to work on a line; it reaches the line through the controls alone. What comes back takes whether
 * the response is in force from now on, which is decided for all kinds alike (`follow`); null for one that is not in
 * force for a while, or sees to itself, in which case it may show when it is in force.
 */
export type Install<Kind extends ResponseSpec['do']> = (
  spec: ResponseOf<Kind>,
  controls: Controls,
  show: Switch,
) => Switch | null;
