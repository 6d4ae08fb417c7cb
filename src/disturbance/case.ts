import type { CaseSpec, Scenario } from '../scenario/scenario.ts';

/** What the one case of all disturbances is called, where the scenario names no cases. */
const ALL = 'all disturbances';

/** The cases of a scenario: those that it names, else the one of all its disturbances. */
export const casesOf = ({ cases, disturbances }: Scenario): readonly CaseSpec[] =>
  cases.length > 0 ? cases : [{ name: ALL, disturbances: disturbances.map(({ name }) => name) }];

/**
 * The scenario in which only the disturbances of one case come, each as it would without the others.
 * @throws RangeError when there is no such case
 */
export function underCase(scenario: Scenario, name: string): Scenario {
  const chosen = casesOf(scenario).find((one) => one.name === name);
  if (!chosen) throw new RangeError(`the scenario has no case "${name}"`);
  const disturbances = scenario.disturbances.filter((it) => chosen.disturbances.includes(it.name));
  return { ...scenario, disturbances };
}
