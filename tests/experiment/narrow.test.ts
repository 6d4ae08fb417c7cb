import { describe, expect, it } from 'vitest';
import { type Narrowing, untilNarrow } from '../../src/experiment/narrow.ts';
import { Budget } from '../../src/experiment/selection/budget.ts';
import { MEASURES } from '../../src/line/measures.ts';
import { fixedWidthTotal } from '../../src/statistics/fixed-width.ts';
import { outcome } from '../report/fake.ts';
import { valuesAbout } from './selection/made-up.ts';

const POLICIES = ['a', 'b'];
const VALUES = valuesAbout([20, 30], 500);
const NARROWING: Narrowing = {
  policies: POLICIES,
  measure: MEASURES[0],
  ...{ half: 0.4, firstStage: 6, most: 300 },
};
const totalOf = (policy: number, firstStage = 6) =>
  fixedWidthTotal(VALUES[policy]!.slice(0, firstStage), 0.4, 0.95);

/** Runs of a second a seed, those of a policy that is not asked about among them. */
function made() {
  let seeds = 0;
  const upTo = async (seed: number) => {
    seeds = Math.max(seeds, seed);
    return Array.from({ length: seeds }, (_, run) => [
      ...POLICIES.map((policy, i) => outcome(policy, run + 1, { throughput_per_h: VALUES[i]![run]! })),
      outcome('a bound', run + 1),
    ]).flat();
  };
  return { upTo, within: (seconds: number) => new Budget(seconds, () => seeds), seeds: () => seeds };
}

describe('runs until the interval is narrow', () => {
  it('are as many as the spread of the first stage tells of the policy that needs most', async () => {
    const { upTo, within, seeds } = made();
    const found = await untilNarrow(NARROWING, upTo, within(Number.POSITIVE_INFINITY));
    const totals = [totalOf(0), totalOf(1)];
    expect(found.rows.map(({ needed }) => needed)).toEqual(totals);
    expect(Math.max(...totals)).toBeGreaterThan(6);
    expect([found.seeds, seeds()]).toEqual([Math.max(...totals), Math.max(...totals)]);
    for (const { estimate } of found.rows) {
      expect(estimate.upper! - estimate.lower!).toBeCloseTo(0.8, 9);
      expect(estimate.runs).toBe(found.seeds);
    }
  });

  it('end at the cap without an interval of that width', async () => {
    const { upTo, within } = made();
    const found = await untilNarrow({ ...NARROWING, most: 8 }, upTo, within(Number.POSITIVE_INFINITY));
    expect(found.seeds).toBe(8);
    expect(found.rows[0]).toMatchObject({ needed: totalOf(0), estimate: { lower: null, upper: null } });
  });

  it.each([2, 4, 20])(
    'out of time after %d seeds give the same as those that may be no more from the start',
    async (seconds) => {
      const late = made();
      const found = await untilNarrow(NARROWING, late.upTo, late.within(seconds));
      expect(found.seeds).toBeLessThanOrEqual(seconds);
      expect(found.most).toBe(found.seeds);
      const { firstStage, most } = found;
      const short = made();
      const again = { ...NARROWING, firstStage, most };
      expect(await untilNarrow(again, short.upTo, short.within(1e9))).toEqual(found);
    },
  );

  it('need a value in each', async () => {
    const upTo = async () => [outcome('a', 1), outcome('b', 1)];
    await expect(untilNarrow(NARROWING, upTo, new Budget(1, () => 0))).rejects.toThrow(
      'it gives no value of throughput, so that its mean has no interval',
    );
  });
});
