import { undisturbed } from '../disturbance/undisturbed.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Rolling windows that the length of a pilot holds; a tenth of one is a bin that is counted. */
const WINDOWS = 50;

/** The scenario as a pilot runs it: undisturbed, all of it counted, in bins of its own. */
export function piloted(scenario: Scenario): Scenario {
  const { warmUp, length } = scenario.run;
  const whole = warmUp + length;
  return {
    ...undisturbed(scenario),
    run: { ...scenario.run, warmUp: 0, length: whole, rolling: whole / WINDOWS },
  };
}
