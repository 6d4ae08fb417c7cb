import { describe, expect, it } from 'vitest';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { shareInterval } from '../../src/statistics/share-interval.ts';

describe('a share over runs', () => {
  // Exact binomial interval for 0 of 100 at 95 %: 0 to 1 - 0.025^(1/100) = 0.0362167 (Clopper and Pearson 1934).
  it('of which nothing was seen may still be as large as exact trials allow', () => {
    const found = shareInterval(
      [0, 1, 2, 3].map(() => ({ hits: 0, of: 25 })),
      0.95,
    );
    expect(found.value).toBe(0);
    expect(found.lower).toBe(0);
    expect(found.upper).toBeCloseTo(0.0362167, 6);
  });

  it('that came up each time may still be as small', () => {
    const found = shareInterval(
      [0, 1, 2, 3].map(() => ({ hits: 25, of: 25 })),
      0.95,
    );
    expect(found.upper).toBe(1);
    expect(found.lower).toBeCloseTo(1 - 0.0362167, 6);
  });

  // 5 of 20, at 95 %: 0.0866 to 0.4910, a much printed example of the exact interval (from memory).
  it('is no narrower than the exact interval of as many trials', () => {
    const found = shareInterval(
      [
        { hits: 2, of: 8 },
        { hits: 3, of: 12 },
      ],
      0.95,
    );
    expect(found.lower).toBeCloseTo(0.0866, 3);
    expect(found.upper).toBeCloseTo(0.491, 3);
  });

  it('that differs much from run to run has the interval of the runs', () => {
    const runs = [400, 600, 450, 550].map((hits) => ({ hits, of: 1000 }));
    const { lower, upper } = meanInterval(
      runs.map(({ hits, of }) => hits / of),
      0.95,
    );
    expect(shareInterval(runs, 0.95)).toMatchObject({ lower, upper });
  });

  it('over one run has no interval', () => {
    expect(shareInterval([{ hits: 1, of: 4 }], 0.95)).toMatchObject({
      value: 0.25,
      lower: null,
      upper: null,
    });
  });
});
