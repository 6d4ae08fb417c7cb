import { describe, expect, it } from 'vitest';
import { plan, planTwins } from '../../src/experiment/plan.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { SOUND } from '../scenario/sample.ts';

describe('plan', () => {
  it('goes seed by seed, so that what has finished can be paired', () => {
    expect(plan(['a', 'b'], 3).map(({ policy, seed }) => `${policy}${seed}`)).toEqual([
      'a1',
      'b1',
      'a2',
      'b2',
      'a3',
      'b3',
    ]);
  });

  it('gives every policy the seeds from 1 on', () => {
    expect(plan(['a'], 4).map(({ seed }) => seed)).toEqual([1, 2, 3, 4]);
    expect(plan([], 4)).toEqual([]);
  });
});

describe('planTwins', () => {
  it('lets each run be followed by its twin', () => {
    const told = planTwins(['a', 'b'], 2).map(
      ({ policy, seed, variant, course }) => `${policy}${seed}${variant ? ' undisturbed' : ''}, ${course}`,
    );
    expect(told.slice(0, 5)).toEqual([
      'a1, true',
      'a1 undisturbed, true',
      'b1, true',
      'b1 undisturbed, true',
      'a2, true',
    ]);
    expect(told).toHaveLength(8);
  });
});

describe('simulate', () => {
  const scenario = parseScenario(SOUND, 'cell.yaml');

  it.each(scenario.policies.map(({ name }) => name))(
    'gives the same outcome for the same policy and seed: %s',
    (policy) => {
      expect(simulate(scenario, policy, 3)).toEqual(simulate(scenario, policy, 3));
      expect(simulate(scenario, policy, 3)).not.toEqual(simulate(scenario, policy, 4));
    },
  );

  it('refuses a policy that the scenario does not have', () => {
    expect(() => simulate(scenario, 'fly', 1)).toThrow('no policy "fly"');
  });
});
