import { undisturbed } from '../disturbance/undisturbed.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What is run instead of the scenario as it is written. */
export interface Variant {
  /** False for the undisturbed twin. */
  readonly disturbed: boolean;
}

/** The scenario of a variant; the scenario itself where none is given. */
export function variantOf(scenario: Scenario, variant?: Variant): Scenario {
  return variant === undefined || variant.disturbed ? scenario : undisturbed(scenario);
}
