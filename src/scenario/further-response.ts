import { findings } from './findings.ts';
import { furtherChecker } from './further-checker.ts';
import { always } from './in-force.ts';
import { inWords } from './in-words.ts';
import { checkPolicy } from './references/check-policy.ts';
import { type ResponseSpec, response } from './responses.ts';
import type { Scenario } from './scenario.ts';

/** What is wrong with something that stands in no file, in words. */
export interface Problems {
  readonly problems: readonly string[];
}

/**
 * Reads a response that stands in no file, in the words of the format, and checks it as one of a policy of the scenario.
 * @param before the responses that the policy has already
 */
export function furtherResponse(
  given: unknown,
  scenario: Scenario,
  before: readonly ResponseSpec[],
): ResponseSpec | Problems {
  const read = response.safeParse(given);
  if (!read.success) return { problems: findings(read.error, given).map(inWords) };
  const check = furtherChecker(scenario);
  checkPolicy(check, { name: '', responses: [...before, read.data] });
  if (check.found.length === 0) {
    const missing = missingWay(read.data, scenario);
    return missing === undefined ? read.data : { problems: [missing] };
  }
  // The path begins with where the response stands in its policy.
  return { problems: check.found.map((found) => inWords({ ...found, path: found.path.slice(3) })) };
}

/** Says so where it turns parts to a way that the line is not built with; undefined where it is, or no way is turned. */
function missingWay(it: ResponseSpec, { policies }: Scenario): string | undefined {
  if (it.do !== 'reroute' && it.do !== 'skip') return undefined;
  const has = (other: ResponseSpec): boolean => {
    if (it.do === 'reroute') return other.do === 'reroute' && other.at === it.at && other.to === it.to;
    return other.do === 'skip' && other.station === it.station && (other.later || !it.later);
  };
  if (policies.some(({ responses }) => responses.some(has))) return undefined;
  const way =
    it.do === 'reroute'
      ? `at: ${it.at}, to: ${it.to}`
      : `station: ${it.station}, later: ${it.later ? 'yes' : 'no'}`;
  return `a line has only the ways that policies of its scenario name; give it one with { do: ${it.do}, ${way}, when: { from: 0 s } }, in the scenario or by --with`;
}

/** The same of what a response does, without what decides when. */
export function furtherAction(
  given: unknown,
  scenario: Scenario,
  before: readonly ResponseSpec[],
): ResponseSpec | Problems {
  const keys = typeof given === 'object' && given !== null ? Object.keys(given) : [];
  const decides = keys.filter((key) => key in always);
  if (decides.length > 0)
    return {
      problems: [`"${decides.join('" and "')}" decide when, which is for whoever switches it; leave it out`],
    };
  const whole = { ...(given as object), when: { from: '0 s' } };
  const read = furtherResponse(keys.length > 0 ? whole : given, scenario, before);
  if (!('problems' in read)) return read;
  // Some kinds see to themselves, and do not know what decides.
  const unknown = 'when: unknown key "when"';
  return read.problems.some((problem) => problem.startsWith(unknown))
    ? {
        problems: [
          `"${(given as { do: string }).do}" sees to itself, so it cannot be switched; put it to work by itself`,
        ],
      }
    : read;
}
