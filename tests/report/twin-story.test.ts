import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { planTwins } from '../../src/experiment/plan.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { compareTwins } from '../../src/experiment/twins.ts';
import { variantOf } from '../../src/experiment/variant.ts';
import { twinStory } from '../../src/report/twin-story.ts';
import { boundOf } from '../../src/scenario/bound.ts';
import { small } from '../line/small-line.ts';
import { outcome } from './fake.ts';
import { POLICIES, STOP, sampleTwins } from './twins-sample.ts';

/** A part every 10 s; from 2 h on it takes 20 s for an hour, or only 15 s where it is hurried meanwhile. */
function slowed(more = '') {
  const scenario = small(
    '5 h',
    `
stock:
  blank: { unlimited: true }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
disturbances:
  tired: { disturbs: speed, station: only, to: 50 %, at: 2 h, for: 1 h }
policies:
  carry on: []
  hurry: [{ do: speed-up, station: only, to: 133.3333 %, when: { from: 2 h, to: 3 h } }]${more}`,
  );
  const names = scenario.policies.map(({ name }) => name);
  const outcomes = planTwins(names, 1).map(({ policy, seed, variant, course }) =>
    simulate(variantOf(scenario, variant), policy, seed, course),
  );
  const pairs = outcomes.flatMap((run, i) => (i % 2 === 0 ? [{ run, twin: outcomes[i + 1]! }] : []));
  const runs = pairs.map(({ run }) => run);
  return twinStory(
    compareTwins(names, pairs, scenario.run),
    compare(names, runs, boundOf(scenario.policies)),
  );
}

describe('the story of the disturbances', () => {
  it('tells what came, what it took, and under whom least and most was lost', () => {
    const [hit, cost, who, ...rest] = slowed();
    expect(hit).toBe(
      'What hit the line: tired (2 h to 3 h), mean times since the start of a run under carry on.',
    );
    // 360 an hour; half of them are lost in the hour, and none is scrapped.
    expect(cost).toMatch(
      /^What it cost: undisturbed, carry on makes 360 good \/h; the disturbances took 180 good of it/,
    );
    // Hurried, a part takes 7.5 s for an hour in the twin and 15 s in the run: 1680 instead of 1920 in all.
    expect(who).toMatch(
      /^Who recovered, by the means: most was made under hurry, 336 good \/h, with 240 good lost .*; least under carry on, 324 good \/h, with 180 good lost/,
    );
    // One run gives no interval.
    expect(rest).toEqual([]);
  });

  it('ranks no bound among the policies', () => {
    // It would have made 360 an hour, and lost nothing.
    expect(slowed('\n  foresight: [{ do: foresee }]')).toEqual(slowed());
  });

  it('says nothing of who recovered where all lost the same, and what the brackets are', () => {
    const same = compare(
      POLICIES,
      POLICIES.map((name) => outcome(name, 1, { throughput_per_h: 300 })),
    );
    const story = twinStory(sampleTwins(5), same);
    expect(story[0]).toContain(`${STOP} (`);
    expect(story.join(' ')).not.toContain('Who recovered');
    expect(story.at(-1)).toContain('95 % intervals');
  });
});
