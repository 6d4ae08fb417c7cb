import type { Scenario } from '../../../scenario/scenario.ts';
import { responsesOf, shiftsAt } from '../response.ts';
import type { Cases } from '../source.ts';

/** By how much sensors that read wrong move all parts: one case, so no variation. */
export function sensorBiasCases(scenario: Scenario): Cases[] {
  return responsesOf(scenario).flatMap((response) =>
    response.deviations
      .filter(({ name, offset }) => offset !== 0 && !response.curved.has(name))
      .map(({ name, offset }) => ({
        name: `${name} sensor`,
        cases: [{ share: 1, shifts: shiftsAt(new Map([[name, offset]]), response) }],
      })),
  );
}
