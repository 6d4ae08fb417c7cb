import { mean, quantile } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { samplerOf } from '../../src/kernel/distributions/index.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { crossingInterval } from '../../src/statistics/crossing.ts';
import { studentQuantile } from '../../src/statistics/mean-interval.ts';

type Levels = Parameters<typeof crossingInterval>[0];

const normal = (stream: string, sd = 1) =>
  samplerOf({ distribution: 'normal', mean: 0, sd }, new Streams(7).of(stream));

/** Where the mean difference, straight between the levels, first comes down to zero; null where it never does. */
function crossingOf(levels: Levels): number | null {
  const means = levels.map(({ differences }) => mean([...differences]));
  const i = means.findIndex((value, k) => k > 0 && means[k - 1]! > 0 && value <= 0);
  if (i < 0) return null;
  const [from, to] = [levels[i - 1]!.level, levels[i]!.level];
  return from + ((to - from) * means[i - 1]!) / (means[i - 1]! - means[i]!);
}

const found = (levels: Levels, coverage = 0.95) => crossingInterval(levels, crossingOf(levels)!, coverage);

/** Made-up runs: each has a luck of its own at all levels, and one at each; means fall by a straight line. */
function made(
  runs: number,
  at: readonly number[],
  meanAt: (level: number) => number,
  luck: () => number,
): Levels {
  const shared = Array.from({ length: runs }, luck);
  return at.map((level) => ({ level, differences: shared.map((own) => meanAt(level) + own + luck()) }));
}

describe('the interval of a crossing', () => {
  // E. C. Fieller (1954), J. R. Statist. Soc. B 16, 175-185, as commonly written: the interval of a ratio a/b of means
  // with variances v11 and v22 and covariance v12. Between levels 0 and 1 the crossing is such a ratio, of the mean
  // difference at 0 to what it falls by.
  it('is that of Fieller for a ratio of means', () => {
    const [levels, luck] = [[0, 1], normal('fieller')];
    for (const runs of [3, 8, 40]) {
      const both = made(runs, levels, (level) => 4 - 10 * level, luck);
      const one = [...both[0]!.differences];
      const falls = one.map((value, i) => value - both[1]!.differences[i]!);
      const [a, b] = [mean(one), mean(falls)];
      const moment = (x: readonly number[], y: readonly number[]) => {
        const [p, q] = [mean([...x]), mean([...y])];
        return x.reduce((sum, value, i) => sum + (value - p) * (y[i]! - q), 0) / (runs - 1) / runs;
      };
      const [v11, v12, v22] = [moment(one, one), moment(one, falls), moment(falls, falls)];
      const t = studentQuantile(0.975, runs - 1);
      const g = (t * t * v22) / (b * b);
      expect(g, 'a bounded interval').toBeLessThan(1);
      const half = (t / b) * Math.sqrt(v11 - (2 * a * v12) / b + ((a / b) ** 2) * v22 - g * (v11 - v12 ** 2 / v22)); // biome-ignore format: one line reads better
      const middle = a / b - (g * v12) / v22;
      const { lower, upper } = found(both);
      if ((middle - half) / (1 - g) >= 0) expect(lower).toBeCloseTo((middle - half) / (1 - g), 9);
      else expect(lower).toBeNull();
      if ((middle + half) / (1 - g) <= 1) expect(upper).toBeCloseTo((middle + half) / (1 - g), 9);
      else expect(upper).toBeNull();
    }
  });

  // Exact for normal differences, so the share of samples it covers is binomial about its level.
  it.each([
    [3, 12],
    [6, 6],
    [30, 2],
  ])(
    'of %d runs, falling by %d at each level, covers the true crossing as often as it says',
    (runs, slope) => {
      const [truth, samples, luck] = [1.3, 4000, normal(`coverage ${runs}`)];
      let covered = 0;
      for (let i = 0; i < samples; i++) {
        const levels = made(runs, [0, 1, 2, 4], (level) => slope * (truth - level), luck);
        const { lower, upper } = found(levels);
        if ((lower ?? 0) <= truth && truth <= (upper ?? 4)) covered++;
      }
      const error = Math.sqrt((0.95 * 0.05) / samples);
      expect(Math.abs(covered / samples - 0.95)).toBeLessThan(3.5 * error);
    },
  );

  it('stays open rather than miss where the runs hardly tell', () => {
    const [truth, samples, luck] = [1.3, 2000, normal('weak')];
    let [missed, open] = [0, 0];
    for (let i = 0; i < samples; i++) {
      const levels = made(8, [0, 1, 2], (level) => 0.3 * (truth - level), luck);
      const value = crossingOf(levels);
      if (value === null) continue;
      const { lower, upper } = crossingInterval(levels, value, 0.95);
      if ((lower ?? 0) > truth || (upper ?? 2) < truth) missed++;
      if (lower === null || upper === null) open++;
    }
    expect(open).toBeGreaterThan(samples / 4);
    expect(missed / samples).toBeLessThan(0.05 + 3.5 * Math.sqrt((0.95 * 0.05) / samples));
  });

  // B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap (1993), chapter 13: percentile interval by
  // resampling, here of runs. With many runs the two agree.
  it('agrees with a percentile bootstrap over many runs', () => {
    const levels = made(200, [0, 0.5, 1, 2], (level) => 3 * (0.8 - level), normal('bootstrap'));
    const pick = new Streams(7).of('pick');
    const again = Array.from({ length: 2000 }, () => {
      const chosen = Array.from({ length: 200 }, () => Math.floor(200 * pick()));
      return crossingOf(
        levels.map(({ level, differences }) => ({ level, differences: chosen.map((i) => differences[i]!) })),
      )!;
    });
    const { lower, upper } = found(levels);
    const width = upper! - lower!;
    expect(Math.abs(lower! - quantile(again, 0.025))).toBeLessThan(0.1 * width);
    expect(Math.abs(upper! - quantile(again, 0.975))).toBeLessThan(0.1 * width);
  });

  it('has no width where the runs do not differ', () => {
    const levels = [4, 1, -5].map((value, level) => ({ level, differences: [value, value, value] }));
    const { value, lower, upper } = found(levels);
    expect(value).toBeCloseTo(1 + 1 / 6, 12);
    expect(lower).toBeCloseTo(value, 9);
    expect(upper).toBeCloseTo(value, 9);
  });

  it('is open on a side where no level decides, and of one run on both', () => {
    const levels = [
      { level: 0, differences: [10, 11, 12] },
      { level: 1, differences: [9, -5, -7] },
    ];
    const { lower, upper } = found(levels);
    expect(lower).toBeGreaterThan(0);
    expect(upper).toBeNull();
    const single = levels.map(({ level, differences }) => ({ level, differences: [differences[1]!] }));
    expect(found(single)).toEqual({ value: 11 / 16, lower: null, upper: null });
  });

  it('is bounded by the nearest levels that decide, where the difference turns back', () => {
    const around = (value: number) => [value - 1, value, value + 1];
    const levels = [9, -9, 9, -9].map((value, level) => ({ level, differences: around(value) }));
    const [first, last] = [crossingInterval(levels, 0.5, 0.95), crossingInterval(levels, 2.5, 0.95)];
    // Student's t at 0.975 with two degrees of freedom is 4.30265, and the standard error 1/sqrt(3).
    const off = 4.30265 / Math.sqrt(3) / 18;
    expect([first.lower! - 0.5, first.upper! - 0.5]).toEqual([
      expect.closeTo(-off, 5),
      expect.closeTo(off, 5),
    ]);
    expect([last.lower! - 2.5, last.upper! - 2.5]).toEqual([expect.closeTo(-off, 5), expect.closeTo(off, 5)]);
  });
});
