import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { outcome } from '../report/fake.ts';

type Values = Partial<Record<MeasureKey, number>>;

function bestOf(values: Record<string, readonly Values[]>, bound: string | null = null) {
  const names = Object.keys(values);
  const outcomes = names.flatMap((name) => values[name]!.map((own, i) => outcome(name, i + 1, own)));
  return compare(names, outcomes, bound).measures.map(({ best }) => best);
}

const throughputs = (...values: number[]): Values[] => values.map((value) => ({ throughput_per_h: value }));

describe('comparisons with the best', () => {
  // Paired differences of standard deviation 1 over three runs: half width t / sqrt(3), t(0.975, 2) = 4.3027 in printed
  // tables, which is one-sided 95 % of two comparisons.
  const values = {
    a: throughputs(10, 50, 90),
    b: throughputs(11, 52, 93),
    c: throughputs(15, 54, 96),
  };
  const half = 4.3027 / Math.sqrt(3);

  it('show who may be best, and who surely is', () => {
    const [best] = bestOf(values);
    expect(best!.map(({ policy, mayBeBest, best: surely }) => [policy, mayBeBest, surely])).toEqual([
      ['a', false, false],
      ['b', false, false],
      ['c', true, true],
    ]);
    expect(best![2]!.difference.value).toBeCloseTo(3, 12);
    expect(best![2]!.difference.lower).toBe(0);
    expect(best![2]!.difference.upper).toBeCloseTo(3 + half, 3);
  });

  it('hold together over the measures', () => {
    // Of two measures each at 97.5 %: t(0.9875, 2) = 6.2053, so that 3 is no longer beyond 6.2053 / sqrt(3) = 3.58.
    const twice = Object.fromEntries(
      Object.entries(values).map(([name, own]) => [
        name,
        own.map((one) => ({ ...one, lead_time_s: one.throughput_per_h })),
      ]),
    ) as Record<string, Values[]>;
    const [output, lead] = bestOf(twice);
    expect(output!.map(({ mayBeBest }) => mayBeBest)).toEqual([false, true, true]);
    expect(output![2]!.difference.upper).toBeCloseTo(3 + 6.2053 / Math.sqrt(3), 3);
    // Shorter is better: 5 less than c is beyond it, 2 less than b is not.
    expect(lead!.map(({ mayBeBest }) => mayBeBest)).toEqual([true, true, false]);
  });

  it('leave the bound out', () => {
    expect(bestOf({ ...values, known: throughputs(99, 99, 99) }, 'known')).toEqual(bestOf(values));
  });

  it('call all of them possibly best where all runs are equal', () => {
    const [best] = bestOf({ a: throughputs(5, 6), b: throughputs(5, 6), c: throughputs(5, 6) });
    for (const row of best!) expect(row).toMatchObject({ mayBeBest: true, best: false });
  });

  it('go by the seeds under which all gave a value, those without any left out', () => {
    const [best] = bestOf({
      a: [{}, ...throughputs(50, 90)],
      b: throughputs(11, 52, 93),
      c: [{}, {}, {}],
    });
    expect(best!.map(({ policy }) => policy)).toEqual(['a', 'b']);
    expect(best![1]!.difference).toMatchObject({ value: 2.5, runs: 2 });
  });

  it('are none under one seed, of one policy, or where no seed gives all a value', () => {
    expect(bestOf({ a: throughputs(1), b: throughputs(2) })).toEqual([[]]);
    expect(bestOf({ a: throughputs(1, 2) })).toEqual([[]]);
    expect(bestOf({ a: [...throughputs(1), {}], b: [{}, ...throughputs(2)] })).toEqual([[]]);
  });
});
