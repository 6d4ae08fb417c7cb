import type { CaseSpec, Scenario } from '../scenario/scenario.ts';

/** What the case of all disturbances is called, where the scenario names no cases. */
const ALL = 'all together';

/** The cases of a scenario: those that it names, else each disturbance by itself and, of several, all together. */
export function casesOf({ cases, disturbances }: Scenario): readonly CaseSpec[] {
  if (cases.length > 0) return cases;
  const names = disturbances.map(({ name }) => name);
  const single = names.map((name) => ({ name, disturbances: [name] }));
  if (names.length < 2) return single;
  return [...single, { name: names.includes(ALL) ? `${ALL}, every one` : ALL, disturbances: names }];
}

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
