import { sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chartOf } from '../../../src/statistics/charts/chart-of.ts';
import { Cusum } from '../../../src/statistics/charts/cusum.ts';
import { Ewma, ewmaSigma } from '../../../src/statistics/charts/ewma.ts';
import { MeanOf } from '../../../src/statistics/charts/mean-of.ts';
import type { RunRule } from '../../../src/statistics/charts/run-rules.ts';
import { Shewhart } from '../../../src/statistics/charts/shewhart.ts';
import { expectMean } from '../../outside-checks/by-simulation.ts';
import { normals } from '../normals.ts';

/** At which of these points, counted from 1, the chart signals first; 0 is never. */
const signalAt = (chart: { next(value: number): boolean }, values: readonly number[]) =>
  values.findIndex((value) => chart.next(value)) + 1;

describe('a Shewhart chart', () => {
  const chart = (...runRules: RunRule[]) => new Shewhart({ chart: 'shewhart', limit: 3, runRules });

  it('signals beyond its limits on either side, and not on them', () => {
    expect(signalAt(chart(), [3, -3, 2.9, 3.1])).toBe(4);
    expect(signalAt(chart(), [0, -3.1])).toBe(2);
  });

  // Western Electric Company (1956), Statistical Quality Control Handbook.
  it('signals at two of three points beyond two sigmas on one side', () => {
    expect(signalAt(chart('2-of-3'), [2.5, 0, 2.5])).toBe(3);
    expect(signalAt(chart('2-of-3'), [2.5, 0, 0, 2.5])).toBe(0);
    expect(signalAt(chart('2-of-3'), [2.5, -2.5, 0, -2.5])).toBe(4);
    expect(signalAt(chart('2-of-3'), [2.5, -2.5, 1.9, -1.9])).toBe(0);
  });

  it('signals at four of five points beyond one sigma on one side', () => {
    expect(signalAt(chart('4-of-5'), [1.1, 1.1, 0, 1.1, 1.1])).toBe(5);
    expect(signalAt(chart('4-of-5'), [1.1, 1.1, 0, 1.1, 0.9, 1.1])).toBe(0);
    expect(signalAt(chart('4-of-5'), [-1.1, -1.1, -1.1, 1.1, -1.1])).toBe(5);
  });

  it('signals at eight points in a row on one side', () => {
    expect(signalAt(chart('8-in-a-row'), new Array(8).fill(0.1))).toBe(8);
    expect(signalAt(chart('8-in-a-row'), [...new Array(7).fill(0.1), -0.1, ...new Array(8).fill(0.1)])).toBe(
      16,
    );
    expect(signalAt(chart('8-in-a-row'), [...new Array(7).fill(-0.1), 0])).toBe(0);
  });

  it('forgets what it saw when it starts anew', () => {
    const rules = chart('2-of-3');
    rules.next(2.5);
    rules.restart();
    expect(rules.next(2.5)).toBe(false);
  });
});

describe('a CUSUM chart', () => {
  const spec = { chart: 'cusum', slack: 0.5, limit: 4, headStart: 0, side: 'both' } as const;

  it('sums up what exceeds the slack, never below zero, on both sides', () => {
    // Up: 1, 0, 0.5, 2, 3.5, 5.
    expect(signalAt(new Cusum(spec), [1.5, -2, 1, 2, 2, 2])).toBe(6);
    // Down: 2, 4, 4.5.
    expect(signalAt(new Cusum(spec), [-2.5, -2.5, -1])).toBe(3);
  });

  it('looks to one side where it is told so', () => {
    expect(signalAt(new Cusum({ ...spec, side: 'up' }), [-9, -9])).toBe(0);
    expect(signalAt(new Cusum({ ...spec, side: 'down' }), [9, 9, -9])).toBe(3);
  });

  it('starts ahead by its head start, also when it starts anew', () => {
    const chart = new Cusum({ ...spec, headStart: 0.5 });
    // 2, 3.5, 5 on the way up.
    expect(signalAt(chart, [2, 2])).toBe(2);
    chart.restart();
    expect(signalAt(chart, [2, 2])).toBe(2);
  });
});

describe('an EWMA chart', () => {
  it('S12: gives the running means and limits of the NIST/SEMATECH e-Handbook, 6.3.2.4', () => {
    const [start, sigma, weight] = [50, 2.0539, 0.3];
    const data = [
      ...[52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5],
      ...[49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1],
    ];
    const printed = [
      ...[50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33],
      ...[50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99],
    ];
    const chart = new Ewma({ chart: 'ewma', weight, limit: 3 });
    for (const [i, value] of data.entries()) {
      expect(chart.next((value - start) / sigma)).toBe(false);
      // Half of the last printed digit, and a little for means that fall on it.
      expect(Math.abs(start + sigma * chart.mean - printed[i]!)).toBeLessThan(0.00501);
    }
    expect(start + 3 * ewmaSigma(weight) * sigma).toBeCloseTo(52.5884, 4);
    expect(start - 3 * ewmaSigma(weight) * sigma).toBeCloseTo(47.4116, 4);
  });

  it.each([
    [0.1, 0.0526316],
    [0.2, 0.111111],
    [0.3, 0.176471],
    [1, 1],
  ])('S13: makes the variance of white noise %d/(2 - %d): S. W. Roberts (1959)', (weight, ratio) => {
    expect(Math.abs(ewmaSigma(weight) ** 2 / ratio - 1)).toBeLessThan(1e-5);
    const ratios = Array.from({ length: 30 }, (_, seed) => {
      const next = normals(seed + 1);
      const chart = new Ewma({ chart: 'ewma', weight, limit: 9 });
      const means = Array.from({ length: 4000 }, () => {
        chart.next(next());
        return chart.mean;
      });
      return sampleVariance(means.slice(200));
    });
    expectMean(ratios, ratio, 0.03);
  });

  it('signals beyond its limits', () => {
    // The limits are 3 sqrt(0.5 / 1.5) = 1.732.
    expect(signalAt(new Ewma({ chart: 'ewma', weight: 0.5, limit: 3 }), [2, 2, 2])).toBe(3);
  });
});

describe('a chart of means', () => {
  it('takes so many values a point, in sigmas of their mean', () => {
    const seen: number[] = [];
    const plain = { next: (value: number) => seen.push(value) === 2, restart: () => seen.push(Number.NaN) };
    const chart = new MeanOf(plain, 4);
    expect(signalAt(chart, [1, 2, 3, 4, 1, 1, 1, 1])).toBe(8);
    expect(seen).toEqual([5, 2]);
    chart.next(9);
    chart.restart();
    for (let i = 0; i < 4; i++) chart.next(1);
    expect(seen.slice(2)).toEqual([Number.NaN, 2]);
  });

  it('is made where a chart has more than one value a point', () => {
    const spec = { chart: 'shewhart', limit: 3, runRules: [] } as const;
    expect(signalAt(chartOf({ ...spec, meanOf: 4 }), [1.6, 1.6, 1.6, 1.6])).toBe(4);
    expect(signalAt(chartOf({ ...spec, meanOf: 1 }), [1.6, 1.6, 1.6, 1.6])).toBe(0);
  });
});
