import type { Cell, PolicyModule, Reading } from '../../../src/policy/module/cell.ts';

// The type checker holds each line below to be an error; if one were none, `npm run check` would fail.
export const asks = (cell: Cell, reading: Reading): unknown[] => [
  // @ts-expect-error a reading has no true value
  reading.truth,
  // @ts-expect-error nor the row of its part
  reading.row,
  // @ts-expect-error a cell has no parts
  cell.parts,
  // @ts-expect-error nor a line
  cell.line,
  // @ts-expect-error nor luck
  cell.streams,
  // @ts-expect-error nor disturbances
  cell.disturbances,
  // @ts-expect-error a sight is one of three words
  cell.onSight('gauging', 'truth', () => {}),
];

export const changes = (cell: Cell, reading: Reading): void => {
  // @ts-expect-error what was read stays what it was
  reading.value = 1;
  // @ts-expect-error so does the time
  cell.now = 0;
};

// @ts-expect-error a policy has a name
export const nameless: PolicyModule = { start: () => {} };
