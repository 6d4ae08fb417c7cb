import { simulate } from '../../../src/experiment/simulate.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import type { Cell } from '../../../src/policy/module/cell.ts';
import { startModule } from '../../../src/policy/module/start.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

/** What a run of the scenario's first policy comes to with this code beside it. */
export function ranWith(scenario: Scenario, start: (cell: Cell) => void, seed = 1): Outcome {
  const policy = scenario.policies[0]!.name;
  return simulate(scenario, policy, seed, false, (controls) =>
    startModule({ name: policy, start }, controls, scenario, 'code.ts'),
  );
}

/** The outcome of a policy of the scenario as if it were the first. */
export function ranAs(scenario: Scenario, policy: string, seed = 1): Outcome {
  return { ...simulate(scenario, policy, seed), policy: scenario.policies[0]!.name };
}
