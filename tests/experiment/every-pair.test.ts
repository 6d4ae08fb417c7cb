import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { outcome, wobble } from '../report/fake.ts';

const THROUGHPUTS: Record<string, readonly number[]> = { a: [10, 50, 90], b: [11, 52, 93], c: [15, 54, 96] };

function compared(
  values: Record<string, readonly (number | null)[]>,
  { key = 'throughput_per_h' as MeasureKey, bound = null as string | null } = {},
) {
  const names = Object.keys(values);
  const outcomes = names.flatMap((name) =>
    values[name]!.map((value, i) => outcome(name, i + 1, value === null ? {} : { [key]: value })),
  );
  return compare(names, outcomes, bound);
}

/** Of 2 degrees of freedom the two-sided chance has a closed form, from the density of Student's t. */
const chance = (t: number) => 1 - t / Math.sqrt(2 + t * t);

describe('every pair', () => {
  const { measures, pairComparisons } = compared(THROUGHPUTS);
  const { pairs } = measures[0]!;

  it('is each policy against each before it', () => {
    expect(pairs.map(({ policy, other }) => [policy, other])).toEqual([
      ['b', 'a'],
      ['c', 'a'],
      ['c', 'b'],
    ]);
    expect(pairComparisons).toBe(3);
  });

  it('has paired intervals that hold together', () => {
    // Differences 1, 2, 3, then 5, 4, 6, then 4, 2, 3, each of standard deviation 1; t(1 - 0.05/6, 2) = 7.6489 by the inverse
    // of the closed form, t = q sqrt(2 / (1 - q^2)) with q = 1 - 0.05/3.
    const q = 1 - 0.05 / 3;
    const half = (q * Math.sqrt(2 / (1 - q * q))) / Math.sqrt(3);
    for (const [i, mean] of [2, 5, 3].entries()) {
      expect(pairs[i]!.difference!.value).toBeCloseTo(mean, 12);
      expect(pairs[i]!.difference!.upper! - mean).toBeCloseTo(half, 6);
    }
    expect(pairs.map(({ verdict }) => verdict)).toEqual(['undecided', 'better', 'undecided']);
  });

  it('has chances after Holm', () => {
    // The smallest times 3, the next times 2, the largest as it is, never falling; S. Holm (1979).
    const [c2, c5, c3] = [2, 5, 3].map((mean) => chance(mean * Math.sqrt(3)));
    expect(pairs[1]!.chance).toBeCloseTo(3 * c5!, 8);
    expect(pairs[2]!.chance).toBeCloseTo(Math.max(3 * c5!, 2 * c3!), 8);
    expect(pairs[0]!.chance).toBeCloseTo(Math.max(2 * c3!, c2!), 8);
  });

  it('counts the pairs of all measures', () => {
    const both = Array.from({ length: 3 }, (_, i) =>
      ['a', 'b', 'c'].map((name, p) =>
        outcome(name, i + 1, { throughput_per_h: 40 + wobble(p, i), lead_time_s: 60 + wobble(p + 9, i) }),
      ),
    ).flat();
    expect(compare(['a', 'b', 'c'], both).pairComparisons).toBe(6);
  });

  it('is never more decided than the same pair against the first policy', () => {
    const names = ['a', 'b', 'c', 'd'];
    for (let round = 0; round < 20; round++) {
      const outcomes = names.flatMap((name, p) =>
        Array.from({ length: 6 }, (_, i) =>
          outcome(name, i + 1, { throughput_per_h: 40 + 0.4 * p + wobble(p + round * 4, i) }),
        ),
      );
      const [{ rows, pairs }] = compare(names, outcomes).measures as [
        ReturnType<typeof compare>['measures'][0],
      ];
      for (const { policy, difference } of pairs.filter(({ other }) => other === 'a')) {
        const row = rows.find((one) => one.policy === policy)!;
        expect(difference!.lower).toBeLessThan(row.difference!.lower!);
      }
    }
  });

  it('leaves the bound out', () => {
    const made = compared({ ...THROUGHPUTS, known: [99, 99, 99] }, { bound: 'known' });
    expect(made.measures[0]!.pairs).toEqual(pairs);
  });

  it('has no verdict and no chance under one seed, and no pair of one policy', () => {
    expect(compared({ a: [1], b: [2] }).measures[0]!.pairs).toMatchObject([
      { difference: { value: 1, lower: null }, verdict: null, chance: null },
    ]);
    expect(compared({ a: [1, 2] })).toMatchObject({ pairComparisons: 0, measures: [{ pairs: [] }] });
  });

  it('goes by the seeds under which both gave a value', () => {
    const made = compared({ a: [10, 50, null], b: [11, 52, 93], c: [null, null, 7] });
    expect(made.measures[0]!.pairs).toMatchObject([
      { policy: 'b', other: 'a', difference: { value: 1.5, runs: 2 } },
      { policy: 'c', other: 'a', difference: null, verdict: null, chance: null },
      { policy: 'c', other: 'b', difference: { runs: 1 }, verdict: null, chance: null },
    ]);
  });

  it('tells no difference where all runs are equal', () => {
    const made = compared({ a: [5, 6], b: [5, 6], c: [5, 6] });
    for (const pair of made.measures[0]!.pairs)
      expect(pair).toMatchObject({ verdict: 'no difference worth having', chance: 1 });
  });
});
