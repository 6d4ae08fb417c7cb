import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { type MeasureSpread, spreadOf } from '../../src/experiment/spread.ts';
import type { MeasureKey, Totals } from '../../src/line/measures.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { fewestForQuantile } from '../../src/statistics/quantile-interval.ts';
import { quick } from '../cli/command.ts';
import { outcome } from '../report/fake.ts';

const runs = (values: readonly number[], key: MeasureKey = 'throughput_per_h') =>
  values.map((value, i) => outcome('one', i + 1, { [key]: value }));
const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);
const found = (measures: readonly MeasureSpread[], key: MeasureKey) =>
  measures.find(({ measure }) => measure.key === key)!.rows[0]!;

describe('how runs lie', () => {
  it('a bad run is the tenth from below where higher is better, from above where lower is', () => {
    const high = found(spreadOf(['one'], runs(upTo(100))).measures, 'throughput_per_h');
    const low = found(spreadOf(['one'], runs(upTo(100), 'lead_time_s')).measures, 'lead_time_s');
    // Definition 7 of R. J. Hyndman and Y. Fan (1996), The American Statistician 50, 361-365: place 1 + (n - 1) p.
    expect(high.bad.value).toBeCloseTo(10.9, 9);
    expect(low.bad.value).toBeCloseTo(90.1, 9);
    expect(high.median.value).toBeCloseTo(50.5, 9);
    expect(high.values).toEqual(upTo(100));
  });

  // H. A. David and H. N. Nagaraja, Order Statistics: of 20 values, the 6th and the 15th hold the median at 95.86 %.
  it('the median of twenty runs lies between the sixth and the fifteenth', () => {
    const { median } = found(spreadOf(['one'], runs(upTo(20))).measures, 'throughput_per_h');
    expect(median).toMatchObject({ lower: 6, upper: 15, level: 0.95, runs: 20 });
  });

  it('too few runs give no ends: 1 - 0.9^n - 0.1^n first reaches 95 % at 29, and 1 - 2/2^n at 6', () => {
    expect([fewestForQuantile(0.1, 0.95), fewestForQuantile(0.5, 0.95)]).toEqual([29, 6]);
    const of = (n: number) => found(spreadOf(['one'], runs(upTo(n))).measures, 'throughput_per_h');
    expect(of(28).bad).toMatchObject({ lower: null, upper: null });
    expect(of(29).bad).toMatchObject({ lower: 1 });
    expect(of(5).median).toMatchObject({ lower: null, upper: null });
    expect(of(6).median).toMatchObject({ lower: 1, upper: 6 });
    expect(of(1)).toMatchObject({ median: { value: 1, lower: null }, bad: { value: 1, lower: null } });
  });

  it('runs without spread have intervals of no width, and nothing that is no number', () => {
    const same = Array.from({ length: 40 }, (_, i) =>
      outcome('one', i + 1, { scrap_rate: 0.1, fit_rate: 0 }, { scrap_rate: [1, 10], fit_rate: [0, 7] }),
    );
    const { measures, skews } = spreadOf(['one'], same);
    const scrap = found(measures, 'scrap_rate');
    for (const estimate of [scrap.median, scrap.bad])
      expect(estimate).toMatchObject({ value: 0.1, lower: 0.1, upper: 0.1 });
    for (const end of ['value', 'lower', 'upper'] as const) {
      expect(scrap.overAll![end]).toBeCloseTo(0.1, 12);
      expect(found(measures, 'fit_rate').overAll![end]).toBe(0);
    }
    expect(skews.map(({ mean }) => [mean.value, mean.doubtful])).toEqual([
      [0, false],
      [0, false],
    ]);
    expect(JSON.stringify(measures)).not.toMatch(/null,"upper":[\d]|NaN/);
  });
});

describe('a ratio over all runs', () => {
  const ratios = (totals: readonly Totals[]) =>
    found(
      spreadOf(
        ['one'],
        totals.map(([above, below], i) =>
          outcome('one', i + 1, { fit_rate: below ? above / below : null! }, { fit_rate: [above, below] }),
        ),
      ).measures,
      'fit_rate',
    ).overAll!;

  // The jackknife of a mean is the mean, and its interval the t interval (R. G. Miller 1974).
  it('with as much below the line in every run is the mean of the ratios with its t interval', () => {
    const above = [4, 7, 5, 9, 6];
    const all = ratios(above.map((value) => [value, 10]));
    const mean = meanInterval(
      above.map((value) => value / 10),
      0.95,
    );
    for (const end of ['value', 'lower', 'upper'] as const) expect(all[end]).toBeCloseTo(mean[end]!, 12);
  });

  it('gives more weight to runs with more below the line, and takes those with none as they are', () => {
    expect(ratios([[1, 2], [90, 100], [0, 0]]).value).toBe(91 / 102); // biome-ignore format: one line reads better
    expect(ratios([[1, 2], [90, 100], [0, 0]]).runs).toBe(3); // biome-ignore format: one line reads better
  });

  it('has ends where there can be such alone', () => {
    expect(ratios([[9, 9], [1, 9], [9, 9]]).upper).toBe(1); // biome-ignore format: one line reads better
    expect(ratios([[3, 9]])).toMatchObject({ value: 1 / 3, lower: null, method: 'one run, no interval' });
  });

  it('comes to what the counts of simulated runs come to', () => {
    const scenario = parseScenario(quick(), 'quick.yaml');
    const outcomes = [1, 2, 3].map((seed) => simulate(scenario, 'carry on', seed));
    const { measures } = spreadOf(['carry on'], outcomes);
    const sum = (key: 'scrapped' | 'started' | 'reworked') =>
      outcomes.reduce((all, { counts }) => all + counts[key], 0);
    expect(sum('reworked')).toBeGreaterThan(0);
    expect(found(measures, 'rework_rate').overAll!.value).toBe(sum('reworked') / sum('started'));
    expect(found(measures, 'scrap_rate').overAll!.value).toBe(sum('scrapped') / sum('started'));
    // The time that a good part took, over all good parts: each run's mean as often as it has good parts.
    const lead = outcomes.map(({ measures, counts }) => measures.lead_time_s! * counts.good);
    const good = outcomes.reduce((all, { counts }) => all + counts.good, 0);
    expect(found(measures, 'lead_time_s').overAll!.value).toBeCloseTo(
      lead.reduce((all, one) => all + one, 0) / good,
      9,
    );
    // A rate by the hour is no ratio of counts.
    expect(found(measures, 'throughput_per_h').overAll).toBeNull();
  });
});
