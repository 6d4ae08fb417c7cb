import { underCase } from '../disturbance/case.ts';
import { atSeverity } from '../disturbance/severity.ts';
import { undisturbed } from '../disturbance/undisturbed.ts';
import type { Change } from '../scenario/changed.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { piloted } from './piloted.ts';

/** What is run instead of the scenario as it is written. */
export interface Variant {
  /** False for the undisturbed twin. */
  readonly disturbed: boolean;
  /** The case whose disturbances alone come; left out, all come. */
  readonly case?: string;
  /** How many times as severe they are; left out, as written. */
  readonly severity?: number;
  /** Values that the scenario has instead of those written, before all else; see `parseChanged`. */
  readonly changes?: readonly Change[];
  /** Whether it is run as a pilot. */
  readonly pilot?: true;
}

/** The scenario of a variant, its changes apart; the scenario itself where none is given. */
export function variantOf(scenario: Scenario, variant?: Variant): Scenario {
  if (variant === undefined) return scenario;
  if (variant.pilot) return piloted(scenario);
  if (!variant.disturbed) return undisturbed(scenario);
  const chosen = variant.case === undefined ? scenario : underCase(scenario, variant.case);
  return atSeverity(chosen, variant.severity ?? 1);
}
