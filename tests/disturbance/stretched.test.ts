import { describe, expect, it } from 'vitest';
import { stretched, within } from '../../src/disturbance/stretched.ts';
import { type Law, meanOf, samplerOf, varianceOf } from '../../src/kernel/distributions/index.ts';
import { Streams } from '../../src/kernel/streams.ts';

const LAWS: readonly Law[] = [
  { distribution: 'constant', value: 0.7 },
  { distribution: 'uniform', low: 0.2, high: 0.8 },
  { distribution: 'triangular', low: 0.2, mode: 0.3, high: 0.8 },
  { distribution: 'normal', mean: -6, sd: 1 },
  { distribution: 'empirical', values: [0.1, 0.5, 0.9] },
  { distribution: 'lognormal', mean: 3, sd: 2 },
  { distribution: 'gamma', mean: 3, sd: 2 },
  { distribution: 'weibull', mean: 3, shape: 1.5 },
  { distribution: 'exponential', mean: 3 },
  { distribution: 'geometric', chance: 0.3, step: 2 },
];
const draws = (law: Law) => {
  const next = samplerOf(law, new Streams(1).of('any'));
  return Array.from({ length: 50 }, () => next());
};

describe('stretched', () => {
  it.each(LAWS)('draws so many times as much by $distribution, from the same numbers', (law) => {
    const [plain, twice] = [draws(law), draws(stretched(law, 2))];
    for (const [i, x] of plain.entries()) expect(twice[i]).toBeCloseTo(2 * x, 9);
    // Of any law: the mean goes with the factor, the variance with its square.
    expect(meanOf(stretched(law, 2))).toBeCloseTo(2 * meanOf(law), 9);
    expect(varianceOf(stretched(law, 2))).toBeCloseTo(4 * varianceOf(law), 9);
    for (const x of draws(stretched(law, 0))) expect(x).toBeCloseTo(0, 12);
  });

  it.each(LAWS.slice(0, 5))('draws by $distribution what lies so many times as far from elsewhere', (law) => {
    const far = draws(stretched(law, 3, 1));
    for (const [i, x] of draws(law).entries()) expect(far[i]).toBeCloseTo(1 + 3 * (x - 1), 9);
  });

  it('refuses to move what starts at zero', () => {
    expect(() => stretched({ distribution: 'exponential', mean: 3 }, 2, 1)).toThrow(RangeError);
  });
});

describe('within', () => {
  it('keeps the bounds of a law, and all that it may give', () => {
    expect(LAWS.slice(0, 5).map((law) => within(law, 0.25, 0.6))).toEqual([
      { distribution: 'constant', value: 0.6 },
      { distribution: 'uniform', low: 0.25, high: 0.6 },
      { distribution: 'triangular', low: 0.25, mode: 0.3, high: 0.6 },
      { distribution: 'normal', mean: -6, sd: 1 },
      { distribution: 'empirical', values: [0.25, 0.5, 0.6] },
    ]);
  });
});
