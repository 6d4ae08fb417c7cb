import fc from 'fast-check';
import { expect, it } from 'vitest';
import { combinations, fullFactorial } from '../../../src/statistics/designs/full-factorial.ts';

it('has every combination once, the last factor changing fastest', () => {
  expect(fullFactorial([2, 3])).toEqual([
    [0, 0],
    [0, 1],
    [0, 2],
    [1, 0],
    [1, 1],
    [1, 2],
  ]);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 5 }), (levels) => {
      const points = fullFactorial(levels);
      expect(new Set(points.map((row) => row.join())).size).toBe(combinations(levels));
      for (const row of points)
        for (const [factor, at] of row.entries()) expect(at).toBeLessThan(levels[factor]!);
    }),
    { numRuns: 30 },
  );
});

it('refuses more points than allowed before it makes any', () => {
  expect(() => fullFactorial(Array.from({ length: 7 }, () => 10))).toThrow('10000000 points; at most 100000');
  expect(() => fullFactorial([3, 3], 8)).toThrow(RangeError);
});
