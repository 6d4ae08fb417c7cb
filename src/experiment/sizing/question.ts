import { suggestion } from '../../scenario/nearest.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SizeSpec, SizingSpec } from '../../scenario/sizings.ts';
import { SizingError } from './sizing-error.ts';
import { type Target, targetOf } from './target.ts';

/** What is enough at least cost, with the words of the scenario resolved. */
export interface Question {
  readonly name: string;
  readonly policy: string;
  readonly money: string;
  readonly sizes: readonly SizeSpec[];
  readonly targets: readonly Target[];
  /** Probability that what is said of the choice is right. */
  readonly sure: number;
}

/**
 * @param policies names of the scenario's and of policy modules
 * @throws SizingError
 */
export function questionOf(spec: SizingSpec, scenario: Scenario, policies: readonly string[]): Question {
  const { name, money, sizes, meets, sure } = spec;
  const policy = spec.policy ?? policies[0]!;
  if (!policies.includes(policy))
    throw new SizingError(name, `policy "${policy}" is not in the scenario${suggestion(policy, policies)}`);
  const targets = meets.map((target): Target => {
    try {
      return targetOf(target, scenario);
    } catch (error) {
      if (error instanceof RangeError) throw new SizingError(name, error.message);
      throw error;
    }
  });
  return { name, policy, money, sizes, targets, sure };
}
