import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { recoveredOf } from '../../src/experiment/recovered.ts';
import { outcome } from '../report/fake.ts';

/** Runs under seeds 1, 2, ..., of these throughputs by policy. */
const runs = (values: Record<string, readonly number[]>) =>
  Object.entries(values).flatMap(([policy, own]) =>
    own.map((throughput_per_h, i) => outcome(policy, i + 1, { throughput_per_h })),
  );
const NAMES = ['carry on', 'fix', 'worse', 'bound'];

describe('recoveredOf', () => {
  it('is what a policy makes beyond the baseline over what the bound does', () => {
    const outcomes = runs({
      'carry on': [40, 50, 60],
      fix: [43, 56, 69],
      worse: [38, 46, 54],
      bound: [44, 58, 72],
    });
    const { recoverable, shares } = recoveredOf(NAMES, outcomes, 'bound');
    // 4, 8, 12: mean 8, standard deviation 4; t(0.975, 2) = 4.3027 from printed tables: the interval holds zero.
    expect(recoverable.value).toBeCloseTo(8, 12);
    expect(recoverable.upper! - 8).toBeCloseTo((4.3027 * 4) / Math.sqrt(3), 3);
    expect(shares).toBeNull();
    const narrow = runs({
      'carry on': [40, 50, 60],
      fix: [43, 53, 63],
      worse: [36, 46, 56],
      bound: [48, 58, 68],
    });
    const told = recoveredOf(NAMES, narrow, 'bound').shares!;
    expect(told.map(({ policy, share }) => [policy, share.value])).toEqual([
      ['fix', 3 / 8],
      ['worse', -1 / 2],
    ]);
  });

  it('is the ratio of the means, not the mean of the ratios', () => {
    // Beyond the baseline: 1, 2, 6 of 4, 5, 6. Mean 3 over mean 5; the ratios would give 0.55.
    const outcomes = runs({ 'carry on': [10, 10, 10], fix: [11, 12, 16], bound: [14, 15, 16] });
    const [fix] = recoveredOf(['carry on', 'fix', 'bound'], outcomes, 'bound').shares!;
    expect(fix!.share.value).toBeCloseTo(0.6, 12);
    expect(fix!.share.method).toBe('Fieller');
  });

  it('is nothing where the bound makes no more than the baseline, and has no interval of one run', () => {
    const none = runs({ 'carry on': [10, 11], fix: [12, 12], bound: [10, 11] });
    expect(recoveredOf(['carry on', 'fix', 'bound'], none, 'bound').shares).toBeNull();
    const one = runs({ 'carry on': [10], fix: [12], bound: [14] });
    const [fix] = recoveredOf(['carry on', 'fix', 'bound'], one, 'bound').shares!;
    expect(fix!.share).toMatchObject({ value: 0.5, lower: null, upper: null });
  });
});

describe('a bound in a comparison', () => {
  const values = { 'carry on': [40, 50, 60], fix: [41, 52, 63], worse: [38, 46, 54], bound: [41, 52, 63] };
  const rowOf = (compared: ReturnType<typeof compare>, policy: string) =>
    compared.measures[0]!.rows.find((row) => row.policy === policy)!;

  it('is none of the comparisons, and has a difference that holds by itself, without a verdict', () => {
    const with_ = compare(NAMES, runs(values), 'bound');
    const without = compare(NAMES.slice(0, 3), runs(values));
    expect(with_.comparisons).toBe(without.comparisons);
    expect(rowOf(with_, 'fix')).toEqual(rowOf(without, 'fix'));
    // Differences 1, 2, 3, with t(0.975, 2) = 4.3027 from printed tables.
    const { difference, verdict } = rowOf(with_, 'bound');
    expect(difference!.upper! - difference!.value).toBeCloseTo(4.3027 / Math.sqrt(3), 3);
    expect(verdict).toBeNull();
  });

  it('counts no comparison where there is nothing else to compare', () => {
    expect(compare(['carry on', 'bound'], runs(values), 'bound').comparisons).toBe(1);
  });
});
