/** What a machine is doing. `held` is stopped by a policy; the rest are words of the transfer-line literature. */
export const STATES = [
  'working',
  'starved',
  'blocked',
  'down',
  'awaiting_technician',
  'awaiting_spare',
  'awaiting_handling',
  'set_up',
  'off_shift',
  'held',
] as const;

export type State = (typeof STATES)[number];

export const WORKING = 0;
export const STARVED = 1;
export const BLOCKED = 2;
export const DOWN = 3;
export const AWAITING_TECHNICIAN = 4;
export const AWAITING_SPARE = 5;
export const AWAITING_HANDLING = 6;
export const SET_UP = 7;
export const OFF_SHIFT = 8;
export const HELD = 9;
