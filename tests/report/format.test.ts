import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { MEASURES } from '../../src/line/measures.ts';
import { amount, fixed, formatOf } from '../../src/report/format.ts';
import type { Estimate } from '../../src/statistics/estimate.ts';
import { outcome } from './fake.ts';

function estimate(value: number, half: number | null): Estimate {
  const [lower, upper] = half === null ? [null, null] : [value - half, value + half];
  return { value, lower, upper, level: 0.95, runs: half === null ? 1 : 9, method: 't' };
}

function formatFor(index: number, mean: Estimate, difference: Estimate | null) {
  return formatOf({
    measure: MEASURES[index]!,
    rows: [{ estimate: mean, difference }],
  });
}

describe('format', () => {
  it('rounds to the first telling digit of the narrowest interval', () => {
    const format = formatFor(0, estimate(41.234, 0.9), estimate(3.13, 0.92));
    expect(format.value(41.234)).toBe('41.2');
    expect(format.signed(3.13)).toBe('+3.1');
    expect(format.interval(estimate(3.13, 0.92))).toBe('2.2 to 4.0');
  });

  it('shows a share in percent and its difference in percentage points', () => {
    const format = formatFor(2, estimate(0.91, 0.01), estimate(-0.05, 0.01));
    expect(format.value(0.91)).toBe('91.0');
    expect(format.signed(-0.05)).toBe('\u22125.0');
    expect(format.differenceUnit).toBe('percentage points');
  });

  it('has no interval for one run', () => {
    const format = formatFor(0, estimate(41.234, null), null);
    expect(format.interval(estimate(41.234, null))).toBe('no interval');
    expect(format.value(41.234)).toBe('41.2');
  });

  it('does not round a deciding end to zero', () => {
    const format = formatFor(0, estimate(41, 5), estimate(4.02, 4));
    expect(format.interval(estimate(4.02, 4))).toMatch(/^0\.02 to/);
  });

  it('does not round an end to what is worth having', () => {
    const difference = estimate(4.47, 4);
    const made = (worth: number) =>
      formatOf({ measure: MEASURES[0]!, worth, rows: [{ estimate: estimate(41, 5), difference }] });
    expect(made(0).interval(difference)).toBe('0.5 to 8.5');
    expect(made(0.5).interval(difference)).toBe('0.47 to 8.47');
  });

  it('gives an amount as it was written', () => {
    expect(amount(0.003, MEASURES[1])).toBe('0.3 percentage points');
    expect(amount(0.5, MEASURES[0])).toBe('0.5 good /h');
  });

  it('gives what rounds to nothing no sign', () => {
    expect(fixed(-0.01, 1)).toBe('0.0');
    expect(formatFor(0, estimate(41, 5), null).signed(0.001)).toBe('0');
  });

  it('copes with values that are all zero', () => {
    const { measures } = compare(
      ['a', 'b'],
      [outcome('a', 1, { scrap_rate: 0 }), outcome('b', 1, { scrap_rate: 0 })],
    );
    expect(formatOf(measures[0]!).value(0)).toMatch(/^0(\.0+)?$/);
  });
});
