import { type ConditionSpec, partsOf } from '../conditions.ts';
import type { Timing } from '../in-force.ts';
import type { Path } from '../problem.ts';
import type { Checker } from './checker.ts';

/** The names of responses that a condition goes by. */
const named = (it: ConditionSpec | undefined): string[] =>
  it === undefined ? [] : partsOf(it).flatMap((part) => ('response' in part ? [part.response] : []));

/** Whether some time passes each time it comes into force anew. */
const takesTime = ({ notice, actsAfter, coolDown, lasts, until }: Timing): boolean =>
  coolDown !== undefined ||
  (lasts !== undefined && until === undefined) ||
  [notice, actsAfter].some((law) => law !== undefined && (law.distribution !== 'constant' || law.value > 0));

/**
 * Whether the responses of a policy have names of their own, and none brings itself about by way of others without any
 * time passing.
 */
export function checkCircles(
  check: Checker,
  policy: readonly Timing[],
  pathOf: (place: number) => Path,
): void {
  const names = policy.map(({ name }) => name);
  const goesBy = policy.map(({ when, until }) => ({ when: named(when), until: named(until) }));
  for (const [i, name] of names.entries()) {
    if (name !== undefined && names.indexOf(name) < i)
      check.say(
        [...pathOf(i), 'name'],
        `another response of this policy is called "${name}"; give one of them another name`,
      );
    for (const key of ['when', 'until'] as const) {
      const back = goesBy[i]![key].find((other) => other !== name && leads(names.indexOf(other), i));
      if (back !== undefined && !takesTime(policy[i]!))
        check.say(
          [...pathOf(i), key],
          `this response and "${back}" go by each other without any time passing; give one of them "notice" or "cool-down"`,
        );
    }
  }

  /** Whether one response goes by another, perhaps by way of others, none of which takes time. */
  function leads(from: number, to: number, seen = new Set<number>()): boolean {
    if (from < 0 || seen.has(from) || takesTime(policy[from]!)) return false;
    seen.add(from);
    const { when, until } = goesBy[from]!;
    return from === to || [...when, ...until].some((name) => leads(names.indexOf(name), to, seen));
  }
}
