import { underCase } from '../disturbance/case.ts';
import { atSeverity } from '../disturbance/severity.ts';
import { undisturbed } from '../disturbance/undisturbed.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What is run instead of the scenario as it is written. */
export interface Variant {
  /** False for the undisturbed twin. */
  readonly disturbed: boolean;
  /** The case whose disturbances alone come; left out, all come. */
  readonly case?: string;
  /** How many times as severe they are; left out, as written. */
  readonly severity?: number;
}

/** The scenario of a variant; the scenario itself where none is given. */
export function variantOf(scenario: Scenario, variant?: Variant): Scenario {
  if (variant === undefined) return scenario;
  if (!variant.disturbed) return undisturbed(scenario);
  const chosen = variant.case === undefined ? scenario : underCase(scenario, variant.case);
  return atSeverity(chosen, variant.severity ?? 1);
}
