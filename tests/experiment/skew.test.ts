import { describe, expect, it } from 'vitest';
import { skewsOf, twinSkews } from '../../src/experiment/skew.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { outcome } from '../report/fake.ts';
import { sampleTwins } from '../report/twins-sample.ts';

const runs = (policy: string, values: readonly (number | null)[]): Outcome[] =>
  values.map((value, i) =>
    outcome(policy, i + 1, value === null ? {} : { throughput_per_h: value, lead_time_s: 2 }),
  );
const skews = (base: readonly (number | null)[], other: readonly (number | null)[]) =>
  skewsOf(
    new Map([
      ['base', runs('base', base)],
      ['other', runs('other', other)],
    ]),
  );
const oneInTen = Array.from({ length: 100 }, (_, i) => (i % 10 === 0 ? 1 : 0));

describe('skewness behind a comparison', () => {
  // One in ten has skewness 8/3 by definition, for which the rule asks for 178 runs (tests/statistics/skewness.test.ts).
  it('is that of the values behind a mean, and of the differences behind a verdict', () => {
    const [base, other] = skews(
      oneInTen.map(() => 5),
      oneInTen,
    );
    expect(base).toMatchObject({ policy: 'base', mean: { value: 0, doubtful: false }, difference: null });
    for (const one of [other!.mean, other!.difference!]) {
      expect(one).toMatchObject({ runs: 178, doubtful: true });
      expect(one.value).toBeCloseTo(8 / 3, 9);
    }
  });

  it('drops out of a difference where both have it', () => {
    const [, other] = skews(
      oneInTen,
      oneInTen.map((value) => value + 3),
    );
    expect(other!.mean.doubtful).toBe(true);
    expect(other!.difference).toMatchObject({ value: 0, doubtful: false });
  });

  it('pairs by seed, and leaves out what has no value', () => {
    const [, other] = skews([1, null, 1, 1, 1, 1], [4, 9, null, 4, 4, 4]);
    expect(other!.difference).toMatchObject({ value: 0, doubtful: false });
    expect(skews([1, 2], [null, null]).map(({ policy }) => policy)).toEqual(['base', 'base']);
  });

  it('of one run is none', () => {
    for (const { mean, difference } of skews([1], [2])) {
      expect(mean).toMatchObject({ value: 0, doubtful: false });
      if (difference) expect(difference.doubtful).toBe(false);
    }
  });

  it('is told of every mean against the twins', () => {
    const twins = sampleTwins(3);
    expect(twinSkews(twins)).toHaveLength(twins.measures.reduce((sum, { rows }) => sum + rows.length, 0));
  });
});
