import type { Scenario } from '../scenario/scenario.ts';

/**
 * The twin of a scenario: the same without its disturbances. Breakdowns, wear and whatever else belongs to the line
 * stay. What is random has streams by purpose, so the twin meets the same luck under the same seed.
 */
export function undisturbed(scenario: Scenario): Scenario {
  return { ...scenario, disturbances: [] };
}
