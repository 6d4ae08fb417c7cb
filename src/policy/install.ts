import type { Controls } from '../line/controls.ts';
import type { ResponseOf, ResponseSpec } from '../scenario/responses.ts';

/** Puts one response to work on a line; it reaches the line through the controls alone. */
export type Install<Kind extends ResponseSpec['do']> = (spec: ResponseOf<Kind>, controls: Controls) => void;
