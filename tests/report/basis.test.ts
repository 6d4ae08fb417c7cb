import { expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { basisOf } from '../../src/report/basis.ts';
import { outcome, wobble } from './fake.ts';

function basis(policies: number, seeds: number, worth: ReadonlyMap<MeasureKey, number> = new Map()): string {
  const names = ['a', 'b', 'c'].slice(0, policies);
  const outcomes = names.flatMap((name, p) =>
    Array.from({ length: seeds }, (_, i) =>
      outcome(name, i + 1, { throughput_per_h: 40 + wobble(p, i), scrap_rate: 0.1 + wobble(p + 9, i) / 99 }),
    ),
  );
  return basisOf(compare(names, outcomes, null, worth), 0.95);
}

it('names the families of intervals, each with how many hold together', () => {
  expect(basis(3, 4)).toBe(
    "12 runs: 3 policies, each under the same 4 seeds. Intervals are Student's t, those of differences of paired runs. " +
      "Those of the differences to a hold together at 95 %: each is widened by Bonferroni's inequality for 4 comparisons. " +
      'Those of every pair hold together at 95 % by themselves, widened for 6; so do the comparisons with the best, over 2 ' +
      'measures. The intervals of the means hold each by itself at 95 %. Every difference counts as worth having, however small.',
  );
});

it('says nothing of pairs where there is one, and of intervals where there are none', () => {
  expect(basis(2, 4)).not.toContain('pair hold');
  expect(basis(1, 4)).toBe(
    '4 runs of one policy, each under its own seed. Each interval holds by itself at 95 %.',
  );
  expect(basis(1, 1)).toBe('1 run of one policy. One run gives no interval.');
  expect(basis(3, 1)).toMatch(/One run gives no interval\.$/);
});

it('names what is worth having', () => {
  expect(basis(2, 4, new Map([['scrap_rate', 0.005]]))).toMatch(
    / Worth having: more than 0\.5 percentage points in scrap rate; in the other measures every difference\.$/,
  );
  expect(
    basis(
      2,
      4,
      new Map([
        ['throughput_per_h', 2],
        ['scrap_rate', 0.005],
      ]),
    ),
  ).toMatch(
    / Worth having: more than 2 good \/h in throughput and more than 0\.5 percentage points in scrap rate\.$/,
  );
});
