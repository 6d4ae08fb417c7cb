import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { verdictSentences } from '../../src/report/verdict.ts';
import { outcome } from './fake.ts';

const SEEDS = [0, 1, 2, 3, 4, 5, 6, 7];

/** Plus or minus one; over the seeds each policy's signs cancel, and no two policies have the same. */
function sign(policy: number, seed: number): number {
  return (seed >> policy) % 2 === 0 ? 1 : -1;
}

/** Each policy's values are the given ones, moved a little up or down. */
function comparisonOf(
  policies: Record<string, Partial<Record<MeasureKey, number>>>,
  seeds = SEEDS,
  worth: Partial<Record<MeasureKey, number>> = {},
) {
  const names = Object.keys(policies);
  return compare(
    names,
    names.flatMap((name, p) =>
      seeds.map((seed) => {
        const moved = Object.entries(policies[name]!).map(([key, value]) => [
          key,
          value + value * 0.001 * sign(p, seed),
        ]);
        return outcome(name, seed, Object.fromEntries(moved));
      }),
    ),
    null,
    new Map(Object.entries(worth) as [MeasureKey, number][]),
  );
}

describe('verdictSentences', () => {
  it('has nothing to compare with one policy', () => {
    expect(verdictSentences(comparisonOf({ a: { throughput_per_h: 40 } }))).toEqual([
      'There is nothing to compare: a is the only policy.',
    ]);
  });

  it('claims nothing from one seed', () => {
    const sentences = verdictSentences(
      comparisonOf({ a: { throughput_per_h: 40 }, b: { throughput_per_h: 90 } }, [1]),
    );
    expect(sentences).toEqual([
      'One run of each policy gives no interval, so nothing is claimed about their differences.',
    ]);
  });

  it('names what is better and worse, of throughput with the difference and its interval', () => {
    const sentences = verdictSentences(
      comparisonOf({
        a: { throughput_per_h: 40, scrap_rate: 0.05, lead_time_s: 600 },
        b: { throughput_per_h: 44, scrap_rate: 0.09, lead_time_s: 600.1 },
      }),
    );
    expect(sentences).toEqual([
      expect.stringMatching(
        /^b against a: better in throughput \(\+4\.0+ good \/h, 3\.\d+ to 4\.\d+\); worse in scrap rate; undecided in lead time \(run about \d+ more\)\.$/,
      ),
    ]);
  });

  it('gives the size in a measure of which it was said how much is worth having', () => {
    const [first] = verdictSentences(
      comparisonOf({ a: { fit_rate: 0.9 }, b: { fit_rate: 0.8 } }, SEEDS, { fit_rate: 0.05 }),
    );
    expect(first).toMatch(
      /worse in fit rate \(\u2212(10|9)\.?\d* percentage points, \u2212.* to \u2212.*\)\.$/,
    );
  });

  it('tells what is surely better but not by enough, and what is nothing to care for', () => {
    const told = (worth: number) =>
      verdictSentences(
        comparisonOf({ a: { throughput_per_h: 40 }, b: { throughput_per_h: 44 } }, SEEDS, {
          throughput_per_h: worth,
        }),
      )[0];
    expect(told(3)).toMatch(/: better in throughput \(\+4\.0+ good \/h, 3\.\d+ to 4\.\d+\)\.$/);
    expect(told(3.99)).toMatch(
      /: undecided in throughput \(\+4.* to 4\.\d+; surely better, but not surely by enough; run about \d+ more\)\.$/,
    );
    expect(told(4.5)).toMatch(
      /: no difference worth having in throughput \(.*; surely better, but by too little\)\.$/,
    );
  });

  it('says where nothing changed, and not which measures stayed as they were beside others', () => {
    const outcomes = ['a', 'b', 'c'].flatMap((name, p) =>
      SEEDS.map((seed) =>
        outcome(name, seed, { throughput_per_h: 40 + (seed % 3), scrap_rate: 0.1 + (p > 1 ? 0.1 : 0) }),
      ),
    );
    expect(verdictSentences(compare(['a', 'b', 'c'], outcomes)).slice(1)).toEqual([
      'b against a: no difference worth having, no change in any run.',
      'c against a: worse in scrap rate.',
      'May be best in throughput: any of them.',
    ]);
  });

  it('ends with who may be best in throughput, where there are more than two', () => {
    const last = (...values: number[]) =>
      verdictSentences(
        comparisonOf(Object.fromEntries(values.map((value, i) => ['abc'[i], { throughput_per_h: value }]))),
      ).at(-1);
    expect(last(40, 44, 30)).toBe('Surely best in throughput: b.');
    expect(last(40, 30, 40)).toBe('May be best in throughput: a and c.');
    expect(last(40, 44)).toMatch(/^b against a/);
  });

  it('says where there was no comparison', () => {
    const [first] = verdictSentences(
      comparisonOf({ a: { throughput_per_h: 40, fit_rate: 0.9 }, b: { throughput_per_h: 44 } }),
    );
    expect(first).toMatch(/; not compared in fit rate\.$/);
  });
});
