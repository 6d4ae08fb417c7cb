import { describe, expect, it } from 'vitest';
import { compare, LEVEL } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { outcome } from '../report/fake.ts';

type Values = Partial<Record<MeasureKey, number>>;

/** Runs under seeds 1, 2, ..., seed by seed, of the values given by policy. */
function runs(
  values: Record<string, readonly Values[]>,
  worth: Partial<Record<MeasureKey, number>> = {},
  bound: string | null = null,
) {
  const policies = Object.keys(values);
  const seeds = Math.max(...policies.map((policy) => values[policy]!.length));
  const outcomes = Array.from({ length: seeds }, (_, i) =>
    policies.map((policy) => outcome(policy, i + 1, values[policy]![i])),
  ).flat();
  return compare(policies, outcomes, bound, new Map(Object.entries(worth) as [MeasureKey, number][]));
}

const throughputs = (...values: number[]): Values[] => values.map((value) => ({ throughput_per_h: value }));
const rowOf = (compared: ReturnType<typeof compare>, policy: string, key: MeasureKey = 'throughput_per_h') =>
  compared.measures.find(({ measure }) => measure.key === key)?.rows.find((row) => row.policy === policy);

describe('compare', () => {
  it('takes the mean of the differences under the same seed, with a t interval', () => {
    // Differences 1, 2, 3: mean 2, standard deviation 1. From printed tables, t(0.975, 2) = 4.3027, so the
    // half width is 4.3027 / sqrt(3) = 2.4842. The runs themselves differ far more than that.
    const row = rowOf(runs({ a: throughputs(10, 50, 90), b: throughputs(11, 52, 93) }), 'b')!;
    expect(row.difference).toMatchObject({ value: 2, level: LEVEL, runs: 3 });
    expect(row.difference!.lower).toBeCloseTo(-0.4842, 3);
    expect(row.difference!.upper).toBeCloseTo(4.4842, 3);
    expect(row.verdict).toBe('undecided');
  });

  it('widens the differences for the number of comparisons, and the means not at all', () => {
    // Two comparisons at 95 % together: each at 97.5 %, t(0.9875, 2) = 6.2053 in printed Bonferroni tables.
    const compared = runs({
      a: throughputs(10, 50, 90),
      b: throughputs(11, 52, 93),
      c: throughputs(9, 48, 87),
    });
    expect(compared.comparisons).toBe(2);
    const { difference, estimate } = rowOf(compared, 'b')!;
    expect(difference!.upper! - difference!.value).toBeCloseTo(6.2053 / Math.sqrt(3), 3);
    // 11, 52, 93: mean 52, standard deviation 41, at t(0.975, 2). No rate lies below zero.
    expect(estimate.upper! - estimate.value).toBeCloseTo((4.3027 * 41) / Math.sqrt(3), 1);
    expect(estimate.lower).toBe(0);
  });

  it('counts each measure that has values as a comparison of each policy but the first', () => {
    const both = Array(3).fill({ throughput_per_h: 1, scrap_rate: 0.1, lead_time_s: 60 });
    expect(runs({ a: both }).comparisons).toBe(1);
    expect(runs({ a: both, b: both }).comparisons).toBe(3);
    expect(runs({ a: both, b: both, c: both, d: both }).comparisons).toBe(9);
  });

  it.each<[MeasureKey, number, string]>([
    ['throughput_per_h', 0.5, 'better'],
    ['throughput_per_h', -0.5, 'worse'],
    ['fit_rate', 0.5, 'better'],
    ['fit_rate', -0.5, 'worse'],
    ['scrap_rate', 0.5, 'worse'],
    ['scrap_rate', -0.5, 'better'],
    ['rework_rate', 0.5, 'worse'],
    ['work_in_progress_parts', -0.5, 'better'],
    ['lead_time_s', 0.5, 'worse'],
    ['lead_time_s', -0.5, 'better'],
  ])('%s moved by %d is %s', (key, by, verdict) => {
    const at = (value: number): Values => ({ [key]: value });
    const noise = [0, 0.01, -0.01, 0.02, -0.02];
    const compared = runs({
      a: noise.map((own) => at(0.5 + 2 * own)),
      b: noise.map((own) => at(0.5 + by + own)),
    });
    expect(rowOf(compared, 'b', key)!.verdict).toBe(verdict);
  });

  it('is undecided when the interval reaches across zero', () => {
    expect(rowOf(runs({ a: throughputs(1, 2, 3), b: throughputs(2, 2, 2) }), 'b')!.verdict).toBe('undecided');
  });

  it('is no difference worth having when every run gave what the first policy gave', () => {
    expect(rowOf(runs({ a: throughputs(5, 6, 7), b: throughputs(5, 6, 7) }), 'b')).toMatchObject({
      verdict: 'no difference worth having',
      surely: null,
      more: null,
    });
  });

  // As above, differences 1, 2, 3: -0.4842 to 4.4842 by printed tables; 11, 12, 13: 9.5158 to 14.4842.
  it.each([
    [9.5, 'better', 'better'],
    [9.6, 'undecided', 'better'],
    [14.4, 'undecided', 'better'],
    [14.5, 'no difference worth having', 'better'],
  ] as const)('with %d worth having is %s', (worth, verdict, surely) => {
    const compared = runs(
      { a: throughputs(10, 50, 90), b: throughputs(21, 62, 103) },
      { throughput_per_h: worth },
    );
    expect(compared.measures[0]!.worth).toBe(worth);
    expect(rowOf(compared, 'b')).toMatchObject({ verdict, surely });
  });

  it('tells how many more runs would decide, unless the difference is just what is worth having', () => {
    const values = { a: throughputs(10, 50, 90), b: throughputs(11, 52, 93) };
    // A half width of t(0.975, n - 1) / sqrt(n) below the mean of 2: 4.3027 / sqrt(3) is too wide, 3.1824 / sqrt(4) is not.
    expect(rowOf(runs(values), 'b')).toMatchObject({ verdict: 'undecided', more: 1 });
    expect(rowOf(runs(values, { throughput_per_h: 2 }), 'b')).toMatchObject({
      verdict: 'undecided',
      more: null,
    });
  });

  it('decides by what is worth having in that measure alone', () => {
    const values = (by: number) =>
      [10, 50, 90].map((own, i) => ({ throughput_per_h: own + by, lead_time_s: own + by + i / 10 }));
    const compared = runs({ a: values(0), b: values(5) }, { lead_time_s: 6 });
    expect(rowOf(compared, 'b')).toMatchObject({ verdict: 'better' });
    expect(rowOf(compared, 'b', 'lead_time_s')).toMatchObject({
      verdict: 'no difference worth having',
      surely: 'worse',
    });
    expect(compared.measures.map(({ worth }) => worth)).toEqual([0, 6]);
  });

  it('is sure of a difference without any spread', () => {
    const row = rowOf(runs({ a: throughputs(5, 5, 5), b: throughputs(6, 6, 6) }), 'b')!;
    expect(row).toMatchObject({ verdict: 'better', difference: { lower: 1, value: 1, upper: 1 } });
  });

  it('claims nothing from one seed', () => {
    const row = rowOf(runs({ a: throughputs(10), b: throughputs(90) }), 'b')!;
    expect(row).toMatchObject({
      difference: { value: 80, lower: null, upper: null, runs: 1 },
      verdict: null,
    });
  });

  it('compares the first policy with nothing', () => {
    const compared = runs({ a: throughputs(1, 2), b: throughputs(2, 4) });
    expect(compared.baseline).toBe('a');
    expect(rowOf(compared, 'a')).toMatchObject({ difference: null, verdict: null });
  });

  it('leaves out a pair of which one run gives no value', () => {
    const row = rowOf(
      runs({ a: [...throughputs(10, 20), {}, ...throughputs(40)], b: [{}, ...throughputs(21, 31, 43)] }),
      'b',
    )!;
    // Only seeds 2 and 4 give both: differences 1 and 3. The mean of b has three runs behind it.
    expect(row.difference).toMatchObject({ value: 2, runs: 2 });
    expect(row.estimate).toMatchObject({ value: (21 + 31 + 43) / 3, runs: 3 });
  });

  it('compares nothing where no seed gives both, and has no row where there is no value', () => {
    const apart = runs({ a: [...throughputs(1), {}], b: [{}, ...throughputs(2)], c: [{}, {}] });
    expect(rowOf(apart, 'b')).toMatchObject({ difference: null, verdict: null });
    expect(rowOf(apart, 'c')).toBeUndefined();
    expect(apart.measures.map(({ measure }) => measure.key)).toEqual(['throughput_per_h']);
  });
});
