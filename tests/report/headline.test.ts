import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { verdictSentences } from '../../src/report/verdict.ts';
import { outcome, wobble } from './fake.ts';

/** The first sentence on policies a, b and so on with these mean outputs, whose runs vary by about one. */
function first(means: readonly number[], worth = 0): string {
  const names = means.map((_, p) => String.fromCharCode(97 + p));
  const outcomes = names.flatMap((name, p) =>
    Array.from({ length: 30 }, (_, i) =>
      outcome(name, i + 1, { throughput_per_h: means[p]! + wobble(p, i) }),
    ),
  );
  const worths = new Map<MeasureKey, number>(worth > 0 ? [['throughput_per_h', worth]] : []);
  return verdictSentences(compare(names, outcomes, null, worths))[0]!;
}

describe('the first sentence', () => {
  it('tells of all policies at once what they make of the output', () => {
    expect(first([40, 50, 30, 40])).toMatch(
      /^In throughput, b \(\+\d.* good \/h, \d.* to \d.*\) is better than a; c \(\u2212.*\) is worse than a; d is undecided\.$/,
    );
    expect(first([40, 50, 52])).toMatch(/^In throughput, b \(.*\) and c \(.*\) are better than a\.$/);
  });

  it('says so when nothing is decided, and tells what is not worth having', () => {
    expect(first([40, 40, 40])).toBe(
      'In throughput, none of the 2 policies is surely better or worse than a so far.',
    );
    expect(first([40, 40, 50], 3)).toMatch(/ is better than a; b makes no difference worth having\.$/);
  });

  it('counts many policies instead of naming them', () => {
    expect(first([40, 50, 51, 52, 53, 54])).toBe('In throughput, 5 policies are better than a.');
  });

  it('does not say of one policy what the next sentence says', () => {
    expect(first([40, 50])).toMatch(/^b against a: /);
  });
});
