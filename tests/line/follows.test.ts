import { expect, it } from 'vitest';
import { Follows } from '../../src/line/follows.ts';

it('a feature follows deviations, their squares and their products', () => {
  const follows = new Follows(
    [
      { of: 0, gain: 2 },
      { of: 1, gain: -1 },
    ],
    [
      { one: 1, other: 1, gain: 0.5 },
      { one: 0, other: 2, gain: 3 },
    ],
  );
  // 2 x 0.1 - 4 + 0.5 x 16 + 3 x 0.1 x 10
  expect(follows.response(Float64Array.of(0.1, 4, 10))).toBeCloseTo(7.2, 12);
  expect(follows.response(Float64Array.of(0, 0, 0))).toBe(0);
});
