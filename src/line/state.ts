/** What a station is doing. The words are those of the transfer-line literature; `held` is stopped by a policy. */
export const STATES = ['working', 'starved', 'blocked', 'down', 'held'] as const;

export type State = (typeof STATES)[number];

export const WORKING = 0;
export const STARVED = 1;
export const BLOCKED = 2;
export const DOWN = 3;
export const HELD = 4;
