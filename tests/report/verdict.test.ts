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
function comparisonOf(policies: Record<string, Partial<Record<MeasureKey, number>>>, seeds = SEEDS) {
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

  it('names what is better and worse, with the difference and its interval', () => {
    const sentences = verdictSentences(
      comparisonOf({
        a: { throughput_per_h: 40, scrap_rate: 0.05, lead_time_s: 600 },
        b: { throughput_per_h: 44, scrap_rate: 0.09, lead_time_s: 600 },
      }),
    );
    const first = sentences[0];
    expect(first).toMatch(/^b against a: better in throughput \(\+4\.0+ good \/h, 3\.\d+ to 4\.\d+\); /);
    expect(first).toMatch(
      /; worse in scrap rate \(\+4\.0+ percentage points, 3\.\d+ to 4\.\d+\); undecided in lead time\.$/,
    );
    // Two policies leave nothing uncompared.
    expect(sentences.length).toBe(1);
  });

  it('tells a loss of fit in percentage points with a minus sign', () => {
    const [first] = verdictSentences(comparisonOf({ a: { fit_rate: 0.9 }, b: { fit_rate: 0.8 } }));
    expect(first).toMatch(
      /worse in fit rate \(\u2212(10|9)\.?\d* percentage points, \u2212.* to \u2212.*\)\.$/,
    );
  });

  it('says what is not compared where there are more than two policies', () => {
    const sentences = verdictSentences(
      comparisonOf({ a: { throughput_per_h: 40 }, b: { throughput_per_h: 44 }, c: { throughput_per_h: 30 } }),
    );
    expect(sentences.length).toBe(3);
    expect(sentences.at(-1)).toBe('Each policy is compared with a alone, not with the other policies.');
  });

  it('says where there was no comparison', () => {
    const [first] = verdictSentences(
      comparisonOf({ a: { throughput_per_h: 40, fit_rate: 0.9 }, b: { throughput_per_h: 44 } }),
    );
    expect(first).toMatch(/; not compared in fit rate\.$/);
  });

  it('never claims a best policy or an equal one', () => {
    const all = verdictSentences(
      comparisonOf({ a: { throughput_per_h: 40 }, b: { throughput_per_h: 44 }, c: { throughput_per_h: 40 } }),
    ).join(' ');
    expect(all).not.toMatch(/\bbest\b|\bsame\b|\bequal\b/);
  });
});
