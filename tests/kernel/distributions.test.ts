import { describe, expect, it } from 'vitest';
import { type Law, meanOf, samplerOf, varianceOf } from '../../src/kernel/distributions/index.ts';
import { Streams } from '../../src/kernel/streams.ts';

const DRAWS = 200_000;
/** Standard errors that a sample moment may lie off: about one right check in 16 000 lies further. */
const ERRORS = 4;

interface Moments {
  readonly mean: number;
  readonly variance: number;
  /** Fourth central moment over the squared variance; decides how sharp a sample variance is. */
  readonly kurtosis: number;
}

/** Gamma(1/2 + n), Gamma(1) and so on come up for Weibull shapes 2 and 1/2, so no gamma function is needed. */
const weibull2 = (() => {
  // Shape 2 (Rayleigh): raw moments of scale 1 are sqrt(pi)/2, 1, 3 sqrt(pi)/4, 2.
  const [m1, m2, m3, m4] = [Math.sqrt(Math.PI) / 2, 1, (3 * Math.sqrt(Math.PI)) / 4, 2];
  const variance = m2 - m1 * m1;
  const fourth = m4 - 4 * m3 * m1 + 6 * m2 * m1 ** 2 - 3 * m1 ** 4;
  return { m1, variance, kurtosis: fourth / variance ** 2 };
})();

/** Closed forms from any text on probability, by hand here and independent of the program's own. */
const cases: readonly (readonly [string, Law, Moments])[] = [
  ['uniform', { distribution: 'uniform', low: 2, high: 8 }, { mean: 5, variance: 36 / 12, kurtosis: 1.8 }],
  [
    'triangular',
    { distribution: 'triangular', low: 1, mode: 2, high: 6 },
    { mean: 3, variance: (1 + 4 + 36 - 2 - 6 - 12) / 18, kurtosis: 2.4 },
  ],
  [
    'triangular with its mode at the low end',
    { distribution: 'triangular', low: 0, mode: 0, high: 3 },
    { mean: 1, variance: 0.5, kurtosis: 2.4 },
  ],
  ['normal', { distribution: 'normal', mean: 40, sd: 5 }, { mean: 40, variance: 25, kurtosis: 3 }],
  [
    'lognormal',
    { distribution: 'lognormal', mean: 10, sd: 4 },
    // With w = 1 + cv^2 the kurtosis is w^4 + 2 w^3 + 3 w^2 - 3.
    { mean: 10, variance: 16, kurtosis: 1.16 ** 4 + 2 * 1.16 ** 3 + 3 * 1.16 ** 2 - 3 },
  ],
  [
    'gamma of shape 4',
    { distribution: 'gamma', mean: 8, sd: 4 },
    { mean: 8, variance: 16, kurtosis: 3 + 6 / 4 },
  ],
  [
    'gamma of shape 1/4',
    { distribution: 'gamma', mean: 2, sd: 4 },
    { mean: 2, variance: 16, kurtosis: 3 + 6 / 0.25 },
  ],
  [
    'weibull of shape 2',
    { distribution: 'weibull', mean: 3, shape: 2 },
    { mean: 3, variance: (9 * weibull2.variance) / weibull2.m1 ** 2, kurtosis: weibull2.kurtosis },
  ],
  [
    'weibull of shape 1, which is exponential',
    { distribution: 'weibull', mean: 3, shape: 1 },
    { mean: 3, variance: 9, kurtosis: 9 },
  ],
  ['exponential', { distribution: 'exponential', mean: 7 }, { mean: 7, variance: 49, kurtosis: 9 }],
  // With q = 1 - chance the excess kurtosis is 6 + chance^2 / q.
  [
    'geometric',
    { distribution: 'geometric', chance: 0.25, step: 3 },
    { mean: 12, variance: 9 * 12, kurtosis: 9 + 0.0625 / 0.75 },
  ],
  [
    'geometric of a small chance',
    { distribution: 'geometric', chance: 0.001, step: 1 },
    { mean: 1000, variance: 999_000, kurtosis: 9 + 1e-6 / 0.999 },
  ],
  [
    'empirical',
    { distribution: 'empirical', values: [1, 1, 4, 10] },
    // About the mean of 4: deviations 3, 3, 0, 6; squares 9, 9, 0, 36; fourth powers 81, 81, 0, 1296.
    { mean: 4, variance: 54 / 4, kurtosis: 1458 / 4 / (54 / 4) ** 2 },
  ],
];

describe.each(cases)('the law %s', (name, law, { mean, variance, kurtosis }) => {
  it('states the mean and variance of the closed form', () => {
    expect(meanOf(law)).toBeCloseTo(mean, 10);
    expect(varianceOf(law) / variance).toBeCloseTo(1, 10);
  });

  it('draws with that mean and variance, within what the number of draws allows', () => {
    const draw = samplerOf(law, new Streams(11).of(name));
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < DRAWS; i++) {
      const off = draw() - mean;
      sum += off;
      squares += off * off;
    }
    expect(Math.abs(sum / DRAWS)).toBeLessThan(ERRORS * Math.sqrt(variance / DRAWS));
    // The mean square about the true mean has variance (kurtosis - 1) variance^2 / n.
    expect(Math.abs(squares / DRAWS / variance - 1)).toBeLessThan(ERRORS * Math.sqrt((kurtosis - 1) / DRAWS));
  });
});

/** Distribution functions by hand, to see the whole law and not two moments. */
const functions: readonly (readonly [string, Law, (x: number) => number])[] = [
  ['uniform', { distribution: 'uniform', low: 2, high: 8 }, (x) => (x - 2) / 6],
  ['exponential', { distribution: 'exponential', mean: 7 }, (x) => 1 - Math.exp(-x / 7)],
  [
    'weibull of shape 2',
    { distribution: 'weibull', mean: Math.sqrt(Math.PI) / 2, shape: 2 },
    (x) => 1 - Math.exp(-x * x),
  ],
  [
    'triangular',
    { distribution: 'triangular', low: 1, mode: 2, high: 6 },
    (x) => (x <= 2 ? (x - 1) ** 2 / 5 : 1 - (6 - x) ** 2 / 20),
  ],
  [
    // Erlang of 2 stages of mean 3.
    'gamma of shape 2',
    { distribution: 'gamma', mean: 6, sd: 6 / Math.SQRT2 },
    (x) => 1 - (1 + x / 3) * Math.exp(-x / 3),
  ],
];

it.each(functions)(
  'draws of the %s law follow its distribution function (Kolmogorov-Smirnov)',
  (name, law, F) => {
    const n = 20_000;
    const draws = Array.from({ length: n }, samplerOf(law, new Streams(5).of(name))).sort((a, b) => a - b);
    const widest = draws.reduce(
      (most, x, i) => Math.max(most, (i + 1) / n - F(x), F(x) - i / n),
      Number.NEGATIVE_INFINITY,
    );
    // Kolmogorov's 99.9 % point, 1.9495/sqrt(n), any statistics table.
    expect(widest).toBeLessThan(1.9495 / Math.sqrt(n));
  },
);

it('geometric draws fall on each number of steps as often as the closed form says (chi-square)', () => {
  const chance = 0.3;
  const step = 2;
  const n = 100_000;
  const draw = samplerOf({ distribution: 'geometric', chance, step }, new Streams(5).of('geometric'));
  // One to nine steps, and ten or more: chance (1 - chance)^(k - 1) and (1 - chance)^9.
  const expected = Array.from({ length: 10 }, (_, i) => n * 0.7 ** i * (i < 9 ? 0.3 : 1));
  const counts = new Array<number>(10).fill(0);
  for (let i = 0; i < n; i++) {
    const steps = draw() / step;
    expect(Number.isInteger(steps)).toBe(true);
    counts[Math.min(steps, 10) - 1]!++;
  }
  const statistic = counts.reduce((sum, count, i) => sum + (count - expected[i]!) ** 2 / expected[i]!, 0);
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(n);
  // 99.9 % point of chi-square with 9 degrees of freedom, any statistics table.
  expect(statistic).toBeLessThan(27.88);
});

it('a geometric law whose success is certain takes one step, and any other at least one', () => {
  for (const end of [0, 0.5, 1 - 2 ** -32]) {
    expect(samplerOf({ distribution: 'geometric', chance: 1, step: 3 }, () => end)()).toBe(3);
  }
  const unlikely: Law = { distribution: 'geometric', chance: 1e-12, step: 3 };
  expect(samplerOf(unlikely, () => 0)()).toBe(3);
  // P(more than k steps) = (1 - chance)^k, so the last number of a stream, 2^-32 from 1, stands for 32 ln 2 / chance steps.
  expect(samplerOf(unlikely, () => 1 - 2 ** -32)() / 3e12 / (32 * Math.LN2)).toBeCloseTo(1, 9);
});

it('a constant is what it says, with no spread', () => {
  const law: Law = { distribution: 'constant', value: 42 };
  expect([meanOf(law), varianceOf(law)]).toEqual([42, 0]);
  expect(samplerOf(law, new Streams(1).of('x'))()).toBe(42);
});

it('a triangle without width is a constant', () => {
  const draw = samplerOf({ distribution: 'triangular', low: 3, mode: 3, high: 3 }, new Streams(1).of('x'));
  expect([draw(), draw()]).toEqual([3, 3]);
});

it('times drawn from any law but the normal are never negative and always finite, even at the ends of a stream', () => {
  for (const end of [0, 1 - 2 ** -32]) {
    for (const [, law] of cases) {
      const others = new Streams(1).of('others');
      let asked = 0;
      // Some laws reject numbers, so a stream stuck at one end would be asked for ever.
      const value = samplerOf(law, () => (asked++ === 0 ? end : others()))();
      expect(Number.isFinite(value)).toBe(true);
      expect(value).toBeGreaterThanOrEqual(0);
    }
  }
});
