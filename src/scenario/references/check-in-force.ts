import { signals } from '../conditions.ts';
import type { Timing } from '../in-force.ts';
import type { Path } from '../problem.ts';
import type { ResponseSpec } from '../responses.ts';
import { type Around, checkCondition } from './check-condition.ts';
import type { Checker } from './checker.ts';

/** These act when they come into force, so that it makes sense for an instant. */
const AT_ONCE: readonly ResponseSpec['do'][] = ['expedite', 'change-tool'];

/** Whether what decides when a response is in force can do so. */
export function checkInForce(
  check: Checker,
  it: ResponseSpec,
  path: Path,
  policy: Omit<Around, 'self'>,
): void {
  const { name, when, until, lasts } = it as Timing;
  const around = { ...policy, self: name };
  if (when !== undefined) checkCondition(check, when, [...path, 'when'], around);
  if (until !== undefined) checkCondition(check, until, [...path, 'until'], around);
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
