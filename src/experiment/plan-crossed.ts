import { casesOf } from '../disturbance/case.ts';
import type { Outcome } from '../line/outcome.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { plan } from './plan.ts';
import type { Variant } from './variant.ts';
import type { Task } from './worker.ts';

/** What is crossed with what. */
export interface Crossing {
  /** Names of cases of disturbances. */
  readonly cases: readonly string[];
  /** In rising order. */
  readonly severities: readonly number[];
  /** Names in the scenario's order, then those of policy modules. */
  readonly policies: readonly string[];
}

/** One run, as a case and a severity see it. */
export interface CrossedRun {
  readonly case: string;
  readonly severity: number;
  readonly outcome: Outcome;
}

/** What the cases of a scenario are called, none where nothing disturbs it. */
export const caseNames = (scenario: Scenario): string[] => casesOf(scenario).map(({ name }) => name);

/** All cases of severity 0 are the undisturbed twin, which is run once. */
function variantsOf({ cases, severities }: Crossing): Variant[] {
  const disturbed = cases.flatMap((name) =>
    severities
      .filter((severity) => severity > 0)
      .map((severity): Variant => ({ disturbed: true, case: name, severity })),
  );
  return severities.includes(0) ? [{ disturbed: false }, ...disturbed] : disturbed;
}

/** Every policy in every case at every severity under seeds 1 to `seeds`, seed by seed. */
export function planCrossed(crossing: Crossing, seeds: number): Task[] {
  const variants = variantsOf(crossing);
  return plan(crossing.policies, seeds).flatMap((task) => variants.map((variant) => ({ ...task, variant })));
}

/**
 * The runs by case, severity, policy and seed; a run of severity 0 is one of every case.
 * @param done runs of the plan, all or some of them
 */
export function crossedRuns(
  { cases, severities, policies }: Crossing,
  done: readonly { readonly task: Task; readonly outcome: Outcome }[],
): CrossedRun[] {
  const keyOf = (name: string | undefined, severity: number | undefined, policy: string) =>
    JSON.stringify([name ?? null, severity ?? 0, policy]);
  const found = new Map<string, Outcome[]>();
  for (const { task, outcome } of done) {
    const key = keyOf(task.variant?.case, task.variant?.severity, task.policy);
    if (!found.has(key)) found.set(key, []);
    found.get(key)!.push(outcome);
  }
  return cases.flatMap((name) =>
    severities.flatMap((severity) =>
      policies.flatMap((policy) =>
        (found.get(keyOf(severity === 0 ? undefined : name, severity, policy)) ?? []).map((outcome) => ({
          case: name,
          severity,
          outcome,
        })),
      ),
    ),
  );
}
