import { isBound } from '../bound.ts';
import type { Checker, Raw } from './checker.ts';

/**
 * Whether the policy that foresees can be a bound: the only one, not the first, and with nothing to do besides.
 * @param whole whether no policy was left out, so that it is known which is the first
 */
export function checkBounds(check: Checker, policies: Raw['policies'], whole: boolean): void {
  const [bound, ...others] = policies.filter(isBound);
  if (bound === undefined) return;
  const pathOf = ({ name }: Raw['policies'][number], i: number) => {
    const places = check.names.places.get(name);
    return ['policies', name, places?.[i] ?? i, 'do'];
  };
  const foreseesAt = ({ responses }: Raw['policies'][number]) =>
    responses.findIndex((it) => it.do === 'foresee');
  if (whole && bound === policies[0])
    check.say(
      pathOf(bound, foreseesAt(bound)),
      'the first policy is what the others are compared with, and a bound is no policy; put another one first, such as "carry on: []"',
    );
  for (const other of others)
    check.say(
      pathOf(other, foreseesAt(other)),
      `"${bound.name}" foresees already, and one bound is enough; take one of them out`,
    );
  for (const policy of [bound, ...others]) {
    for (const [i, it] of policy.responses.entries()) {
      if (it.do === 'keep' || i === foreseesAt(policy)) continue;
      check.say(
        pathOf(policy, i),
        'who foresees has nothing left to respond to; besides "foresee" a bound may only "keep" stocks',
      );
    }
  }
}
