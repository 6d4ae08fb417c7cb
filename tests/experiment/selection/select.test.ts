import { describe, expect, it } from 'vitest';
import { FailedRunError } from '../../../src/experiment/failed-run.ts';
import { Budget } from '../../../src/experiment/selection/budget.ts';
import { type Choice, select } from '../../../src/experiment/selection/select.ts';
import { sequential } from '../../../src/experiment/selection/sequential.ts';
import type { SelectionSettings } from '../../../src/experiment/selection/settings.ts';
import type { Task } from '../../../src/experiment/worker.ts';
import { MEASURES } from '../../../src/line/measures.ts';
import { outcome } from '../../report/fake.ts';
import { SETTINGS, valuesAbout } from './made-up.ts';

const POLICIES = ['a', 'b', 'c'];
const [measure] = MEASURES;
const VALUES = valuesAbout([20, 23, 22.5], 2000);
const choiceOf = (changed: Partial<SelectionSettings> = {}): Choice => ({
  ...{ policies: POLICIES, measure, settings: { ...SETTINGS, ...changed } },
});

/** Runs that take a second each, and a note of them. */
function made() {
  const asked: Task[] = [];
  const sizes: number[] = [];
  const run = async (tasks: readonly Task[]) => {
    asked.push(...tasks);
    sizes.push(tasks.length);
    return tasks.map(({ policy, seed }) =>
      outcome(policy, seed, { throughput_per_h: VALUES[POLICIES.indexOf(policy)]![seed - 1]! }),
    );
  };
  return { asked, sizes, run, within: (seconds: number) => new Budget(seconds, () => asked.length) };
}

describe('a choice', () => {
  it.each(['sequential', 'two-stage'] as const)(
    '%s runs each seed of each policy once, in order, and no more than the most',
    async (procedure) => {
      const { asked, run, within } = made();
      const found = await select(choiceOf({ procedure, most: 60 }), run, within(Number.POSITIVE_INFINITY));
      for (const policy of POLICIES) {
        const seeds = asked.filter((task) => task.policy === policy).map(({ seed }) => seed);
        expect(seeds).toEqual(seeds.map((_, i) => i + 1));
        expect(seeds.length).toBeLessThanOrEqual(60);
      }
      expect(asked.slice(0, 6).map(({ policy, seed }) => `${policy}${seed}`)).toEqual([
        'a1',
        'b1',
        'c1',
        'a2',
        'b2',
        'c2',
      ]);
      expect(found.outcomes.map(({ policy, seed }) => `${seed} ${policy}`)).toEqual(
        [...found.outcomes]
          .sort((a, b) => a.seed - b.seed || (a.policy < b.policy ? -1 : 1))
          .map(({ policy, seed }) => `${seed} ${policy}`),
      );
    },
  );

  it('ends as the procedure by itself, without the runs that it asked for in advance', async () => {
    const { asked, run, within } = made();
    const found = await select(choiceOf(), run, within(Number.POSITIVE_INFINITY));
    expect(found.standing).toEqual(sequential(VALUES, SETTINGS));
    expect(found.standing.how).toBe('one left');
    const { out, runs, best } = found.standing;
    const counted = out.map((one) => one.runs).concat(runs);
    expect(found.outcomes).toHaveLength(counted.reduce((sum, one) => sum + one, 0));
    expect(found.values[best!]).toEqual(VALUES[best!]!.slice(0, runs));
    expect(asked.length).toBeGreaterThanOrEqual(found.outcomes.length);
    expect(asked.length).toBeLessThan(1.15 * found.outcomes.length);
  });

  it.each([
    ['sequential', 100],
    ['sequential', 9],
    ['sequential', 1],
    ['two-stage', 100],
  ] as const)(
    '%s that is out of time after %d runs gives the same as one that may have no more from the start',
    async (procedure, seconds) => {
      const wanted = choiceOf({ procedure, worth: 0.2 });
      const late = made();
      const found = await select(wanted, late.run, late.within(seconds));
      expect(found.standing.how).toBe('most runs');
      expect(found.settings.most).toBe(found.standing.runs);
      // Two seeds are run in any case.
      expect(late.asked.length).toBeLessThanOrEqual(Math.max(6, seconds));
      const { firstStage, most } = found.settings;
      const short = made();
      const again = await select(
        choiceOf({ procedure, worth: 0.2, firstStage, most }),
        short.run,
        short.within(Number.POSITIVE_INFINITY),
      );
      expect(again).toEqual(found);
    },
  );

  it('asks for the same runs in the same order when it goes on from those that are there', async () => {
    const [whole, resumed] = [made(), made()];
    await select(choiceOf(), whole.run, whole.within(1e9));
    // What is there takes no time.
    await select(choiceOf(), resumed.run, new Budget(1e9, () => Math.max(0, resumed.asked.length - 20)));
    expect(resumed.asked).toEqual(whole.asked);
    expect(resumed.sizes.slice(2)).toEqual(whole.sizes.slice(2));
  });

  it('needs a value in every run', async () => {
    const run = async (tasks: readonly Task[]) => tasks.map(({ policy, seed }) => outcome(policy, seed));
    const chosen = select(choiceOf(), run, new Budget(1, () => 0));
    await expect(chosen).rejects.toThrow(FailedRunError);
    await expect(chosen).rejects.toThrow(
      'the run of policy "a" under seed 1 failed: it gives no value of throughput, so that no policy can be chosen by it',
    );
  });
});
