import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { latinHypercube } from '../../../src/statistics/designs/latin-hypercube.ts';

describe('a Latin hypercube', () => {
  // McKay, Beckman and Conover (1979): one point in each of the equal parts of each coordinate.
  it('has one point in each part of each range', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 5 }),
        (seed, n, factors) => {
          const points = latinHypercube(n, factors, new Streams(seed).of('design'));
          for (let factor = 0; factor < factors; factor++) {
            const parts = points.map((row) => Math.floor(row[factor]! * n)).sort((a, b) => a - b);
            expect(parts).toEqual(Array.from({ length: n }, (_, i) => i));
          }
        },
      ),
    );
  });

  // The same paper: the mean of a function that grows in each coordinate varies less than over independent points; of a sum of
  // coordinates, within one part only: variance factors/(12 n^3) against factors/(12 n).
  it('gives the mean of a sum of coordinates with as little spread as theory says', () => {
    const uniform = new Streams(7).of('design');
    const [n, factors, tries] = [10, 3, 2000];
    let squares = 0;
    for (let i = 0; i < tries; i++) {
      const total = latinHypercube(n, factors, uniform)
        .flat()
        .reduce((sum, x) => sum + x, 0);
      squares += (total / n - factors / 2) ** 2;
    }
    // A sample variance of near normal values has a relative error of sqrt(2 / tries).
    expect(Math.abs(squares / tries / (factors / (12 * n ** 3)) - 1)).toBeLessThan(
      3.5 * Math.sqrt(2 / tries),
    );
  });
});
