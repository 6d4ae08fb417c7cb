import { type ConditionSpec, partsOf, signals } from '../conditions.ts';
import type { Timing } from '../in-force.ts';
import type { Path } from '../problem.ts';
import type { ResponseSpec } from '../responses.ts';
import { checkCondition } from './check-condition.ts';
import type { Checker } from './checker.ts';

/** These act when they come into force, so that it makes sense for an instant. */
const AT_ONCE: readonly ResponseSpec['do'][] = ['expedite', 'change-tool'];

/** Whether what decides when a response is in force can do so. */
export function checkInForce(
  check: Checker,
  it: ResponseSpec,
  path: Path,
  policy: readonly ResponseSpec[],
): void {
  const { when, until, lasts } = it as Timing;
  if (when !== undefined) checkCondition(check, when, [...path, 'when'], policy);
  if (until !== undefined) checkCondition(check, until, [...path, 'until'], policy);
  if (
    when !== undefined &&
    signals(when) &&
    until === undefined &&
    lasts === undefined &&
    !AT_ONCE.includes(it.do)
  )
    check.say(
      [...path, 'when'],
      'a watch signals, which is over at once; say how long the response is in force then: "lasts: 2 h", or "until:" another condition',
    );
}

/** The names of responses that a condition goes by. */
const named = (it: ConditionSpec | undefined): string[] =>
  it === undefined ? [] : partsOf(it).flatMap((part) => ('response' in part ? [part.response] : []));

/** Whether some time passes each time it comes into force anew. */
const takesTime = ({ notice, actsAfter, coolDown, lasts, until }: Timing): boolean =>
  coolDown !== undefined ||
  (lasts !== undefined && until === undefined) ||
  [notice, actsAfter].some((law) => law !== undefined && (law.distribution !== 'constant' || law.value > 0));

/**
 * Whether the responses that go by others name some of the same policy, and none brings itself about without any time
 * passing.
 * @param places of the responses in the file
 * @param whole whether all of the policy's responses are here
 */
export function checkCalls(
  check: Checker,
  policy: readonly ResponseSpec[],
  pathOf: (place: number) => Path,
  whole: boolean,
): void {
  const timings = policy as readonly Timing[];
  const names = timings.map(({ name }) => name);
  const known = names.filter((name) => name !== undefined);
  for (const [i, name] of names.entries())
    if (name !== undefined && names.indexOf(name) < i)
      check.say(
        [...pathOf(i), 'name'],
        `another response of this policy is called "${name}"; give one of them another name`,
      );
  const goesBy = timings.map(({ when, until }) => [...named(when), ...named(until)]);
  for (const [i, its] of goesBy.entries()) {
    const at = (name: string) => [...pathOf(i), named(timings[i]!.when).includes(name) ? 'when' : 'until'];
    for (const name of new Set(its)) {
      if (name === names[i])
        check.say(at(name), `"${name}" goes by itself, so it would trigger itself; name another response`);
      else if (!known.includes(name) && whole)
        check.known(at(name), name, known, 'name of a response of this policy');
      else if (isCircle(i, names.indexOf(name)))
        check.say(
          at(name),
          `"${names[i] ?? 'it'}" and "${name}" go by each other without any time passing; give one of them "notice" or "cool-down"`,
        );
    }
  }

  /** Whether `from` goes by `to`, which goes by `from` again, by way of others perhaps, none of which takes time. */
  function isCircle(from: number, to: number): boolean {
    const seen = new Set<number>();
    const walk = (place: number): boolean => {
      if (place < 0 || takesTime(timings[place]!)) return false;
      if (place === from) return true;
      if (seen.has(place)) return false;
      seen.add(place);
      return goesBy[place]!.some((name) => walk(names.indexOf(name)));
    };
    return !takesTime(timings[from]!) && walk(to);
  }
}
