import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/kernel/normal-quantile.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { spreadInterval } from '../../src/statistics/spread-interval.ts';

describe('the spread over runs', () => {
  // Worked by hand: means 9 and 11 vary by 2 (n - 1), within runs 1 and 3, 2 on the average: 4 in all.
  it('is that within the runs plus that between them', () => {
    const found = spreadInterval(
      [
        { mean: 9, variance: 1 },
        { mean: 11, variance: 3 },
      ],
      0.95,
    );
    expect(found.value).toBeCloseTo(2, 12);
    expect(found.lower).toBeLessThan(2);
    expect(found.upper).toBeGreaterThan(2);
  });

  it('has no interval over one run, and one without width where nothing varies', () => {
    expect(spreadInterval([{ mean: 5, variance: 4 }], 0.95)).toMatchObject({
      value: 2,
      lower: null,
      upper: null,
    });
    const still = [0, 1, 2].map(() => ({ mean: 5, variance: 0 }));
    expect(spreadInterval(still, 0.95)).toMatchObject({ value: 0, lower: 0, upper: 0 });
  });

  // The definition of an interval: 95 of 100 hold the true value, here 5 = sqrt(3^2 + 4^2). Over 2000 repetitions the
  // standard error of the share is half a percent; a skewed variance costs a little, so the bounds are wider below.
  it('holds the true spread about as often as it says, also where runs differ as a whole', () => {
    const stream = new Streams(7).of('check');
    const z = () => normalQuantile(stream() + 2 ** -33);
    let held = 0;
    const repetitions = 2000;
    for (let i = 0; i < repetitions; i++) {
      const runs = Array.from({ length: 20 }, () => {
        const offset = 3 * z();
        const values = Array.from({ length: 50 }, () => offset + 4 * z());
        const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
        return {
          mean,
          variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length,
        };
      });
      const { lower, upper } = spreadInterval(runs, 0.95);
      if (lower! <= 5 && 5 <= upper!) held++;
    }
    expect(held / repetitions).toBeGreaterThan(0.9);
    expect(held / repetitions).toBeLessThan(0.97);
  });
});
