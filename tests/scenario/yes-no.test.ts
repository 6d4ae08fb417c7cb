import { expect, it } from 'vitest';
import { yesNo } from '../../src/scenario/yes-no.ts';

it.each([
  ['yes', true],
  [true, true],
  ['no', false],
  [false, false],
])('%j is %j', (given, meant) => {
  expect(yesNo.parse(given)).toBe(meant);
});

it.each(['y', 1, null, ''])('%j is neither', (given) => {
  expect(yesNo.safeParse(given).success).toBe(false);
});
