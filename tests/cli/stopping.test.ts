import { expect, it } from 'vitest';
import { stoppingOf } from '../../src/cli/stopping.ts';

it('has a first stage, a cap and a time unless said otherwise', () => {
  expect(stoppingOf({})).toEqual({ firstStage: 10, most: 500, within: 3600 });
  expect(stoppingOf({ seeds: 4, atMost: 4, within: '10 min' })).toEqual({
    firstStage: 4,
    most: 4,
    within: 600,
  });
  expect(stoppingOf({ within: 'none' }).within).toBe(Number.POSITIVE_INFINITY);
});

it.each([
  [{ seeds: 1 }, '--seeds 1 is too few: here it is the first stage'],
  [{ atMost: 9 }, '--at-most 9 is less than the first stage of 10 runs of each policy'],
  [{ within: '10' }, '--within "10" is no time; it expects one above 0 such as "10 min", or none'],
  [{ within: '0 s' }, 'is no time'],
  [{ within: '3 mm' }, 'is no time'],
])('refuses %j', (given, told) => {
  expect(() => stoppingOf(given)).toThrow(told);
});
