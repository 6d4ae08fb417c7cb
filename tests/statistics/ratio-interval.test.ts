import { describe, expect, it } from 'vitest';
import { standardNormal } from '../../src/kernel/distributions/normal.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { ratioOfMeans } from '../../src/statistics/ratio-interval.ts';

const ABOVE = [3.1, 4.4, 2.0, 5.2, 3.9, 4.1];
const BELOW = [9.0, 11.5, 8.1, 12.9, 10.2, 9.4];

describe('ratioOfMeans', () => {
  // Fieller's theorem as it is stated: a ratio r is in the interval where the t interval of above - r below holds zero.
  it.each([0.9, 0.95, 0.99])('ends where the t interval of above - r below ends at zero, at %s', (level) => {
    const { value, lower, upper } = ratioOfMeans(ABOVE, BELOW, level)!;
    expect(value).toBeCloseTo(22.7 / 61.1, 12);
    const at = (r: number) =>
      meanInterval(
        ABOVE.map((x, i) => x - r * BELOW[i]!),
        level,
      );
    expect(at(lower!).lower).toBeCloseTo(0, 10);
    expect(at(upper!).upper).toBeCloseTo(0, 10);
    expect(lower!).toBeLessThan(value);
    expect(upper!).toBeGreaterThan(value);
  });

  it('is the t interval of the mean over a divisor that does not vary', () => {
    // 1, 2, 3: mean 2, standard deviation 1; t(0.975, 2) = 4.3027 from printed tables.
    const { value, lower, upper } = ratioOfMeans([1, 2, 3], [10, 10, 10], 0.95)!;
    expect(value).toBeCloseTo(0.2, 12);
    expect(lower).toBeCloseTo((2 - 4.3027 / Math.sqrt(3)) / 10, 5);
    expect(upper).toBeCloseTo((2 + 4.3027 / Math.sqrt(3)) / 10, 5);
  });

  it('is exact where one is always the same share of the other', () => {
    const { value, lower, upper } = ratioOfMeans([5, 6, 8], [10, 12, 16], 0.95)!;
    for (const it of [value, lower, upper]) expect(it).toBeCloseTo(0.5, 12);
  });

  it('is none where the divisor may be zero, and has no interval of one pair', () => {
    // Mean 1, standard deviation 5: its t interval holds zero.
    expect(ratioOfMeans([1, 2, 3], [-4, 1, 6], 0.95)).toBeNull();
    expect(ratioOfMeans([1], [0], 0.95)).toBeNull();
    expect(ratioOfMeans([1], [4], 0.95)).toMatchObject({ value: 0.25, lower: null, upper: null, runs: 1 });
    expect(() => ratioOfMeans([], [], 0.95)).toThrow(RangeError);
    expect(() => ratioOfMeans([1, 2], [1], 0.95)).toThrow(RangeError);
  });

  it('holds the true ratio as often as it says', () => {
    const draw = standardNormal(new Streams(4).of('pairs'));
    const times = 4000;
    let held = 0;
    let known = 0;
    for (let i = 0; i < times; i++) {
      // Means 3 and 10, and what they share makes them vary together.
      const pairs = Array.from({ length: 8 }, () => {
        const shared = draw();
        return [3 + shared + 2 * draw(), 10 + 2 * shared + 3 * draw()] as const;
      });
      const found = ratioOfMeans(
        pairs.map(([x]) => x),
        pairs.map(([, y]) => y),
        0.9,
      );
      if (found === null) continue;
      known++;
      if (found.lower! <= 0.3 && 0.3 <= found.upper!) held++;
    }
    expect(known).toBeGreaterThan(0.99 * times);
    const error = Math.sqrt((0.9 * 0.1) / known);
    expect(Math.abs(held / known - 0.9)).toBeLessThan(3.5 * error);
  });
});
