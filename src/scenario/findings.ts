import type { z } from 'zod';
import type { Finding, Path } from './problem.ts';
import { isMapping } from './raw.ts';

type Issue = z.core.$ZodIssue;

/** What stands at a place of the raw file; undefined where there is nothing. */
export function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown> | null)?.[key], raw);
}

/** What the validator says of a choice that has no words of its own. */
const NO_WORDS = 'Invalid input';

/** Whether this is said of a form that is no mapping at all. */
const ofNoMapping = (issues: readonly Issue[]) =>
  issues.some(({ code, path }) => path.length === 0 && (code === 'invalid_type' || code === 'invalid_union'));

/** How many keys of a mapping a form does not know; a form told apart by a key that is not there is out of the question. */
function strangeKeys(issues: readonly Issue[], given: unknown): number {
  return issues.reduce((sum, issue) => {
    if (issue.code === 'unrecognized_keys') return sum + issue.keys.length;
    const without = issue.code === 'invalid_union' && valueAt(given, issue.path) === undefined;
    return without ? Number.POSITIVE_INFINITY : sum;
  }, 0);
}

/** What is said of a mapping by the form of several that it is most like. */
function likest(errors: readonly (readonly Issue[])[], given: unknown): readonly Issue[] | undefined {
  const [first, ...others] = errors.filter((issues) => !ofNoMapping(issues));
  return others.reduce(
    (best, next) => (strangeKeys(next, given) < strangeKeys(best!, given) ? next : best),
    first ?? errors[0],
  );
}

function findingsOf(issue: Issue, raw: unknown, base: Path): Finding[] {
  const path = [...base, ...issue.path];
  const at = valueAt(raw, path);
  const plain = (): Finding[] => {
    const key = path.at(-1);
    const missing = at === undefined && typeof key === 'string';
    return [{ path, message: missing ? `"${key}" is missing: ${issue.message}` : issue.message }];
  };
  switch (issue.code) {
    case 'unrecognized_keys':
      // One line of the message for each key, in order.
      return issue.message.split('\n').map((message, i) => ({ path, key: issue.keys[i]!, message }));
    case 'invalid_union': {
      if (issue.message !== NO_WORDS) return plain();
      // A choice between mappings and something shorter: speak of the form that was tried.
      const [first, other] = issue.errors;
      const chosen = isMapping(at) ? likest(issue.errors, at) : (other ?? first);
      if (!chosen || chosen.length === 0) return plain();
      return chosen.flatMap((inner) => findingsOf(inner as Issue, raw, path));
    }
    case 'invalid_key':
      return issue.issues.map((inner) => ({
        path: path.slice(0, -1),
        key: String(path.at(-1)),
        message: inner.message,
      }));
    default:
      return plain();
  }
}

/** What a faulty top-level key is taken to be while the rest is checked. */
const STAND_INS: Readonly<Record<string, unknown>> = {
  mendline: 1,
  title: '',
  about: '',
  run: { 'warm-up': '0 s', length: '1 s', seeds: 1 },
  stock: {},
  stations: {},
  policies: {},
};

/** What a failed validation found, with the issues of alternatives unfolded. */
export function findings(error: z.ZodError, raw: unknown): Finding[] {
  return error.issues.flatMap((issue) => findingsOf(issue, raw, []));
}

/** What of a file has no findings. */
interface Sound {
  readonly rest: unknown;
  /** By policy, the places in the file of the responses that are left. */
  readonly places: ReadonlyMap<string, readonly number[]>;
}

/**
 * A copy of `raw` without the entries that hold findings: a station or a response with a problem goes whole, and
 * so does a faulty key of the top level, so that what is left can be checked for cross references.
 */
export function withoutFaulty(raw: unknown, found: readonly Finding[]): Sound {
  const places = new Map<string, number[]>();
  if (!isMapping(raw)) return { rest: undefined, places };
  const copy = structuredClone(raw) as Record<string, unknown>;
  const responses = new Map<string, Set<number>>();
  for (const { path, key } of found) {
    const [section, name, place] = (key === undefined ? path : [...path, key]).map(String);
    const entries = section === undefined ? undefined : copy[section];
    if (section === undefined) continue;
    if (name === undefined || !isMapping(entries) || section === 'demand') {
      if (!Object.hasOwn(STAND_INS, section)) delete copy[section];
      else copy[section] = STAND_INS[section];
    } else if (section === 'run') copy.run = STAND_INS.run;
    else if (section === 'policies' && place !== undefined) {
      responses.set(name, (responses.get(name) ?? new Set()).add(Number(place)));
    } else delete (entries as Record<string, unknown>)[name];
  }
  for (const [policy, faulty] of responses) {
    const policies = copy.policies as Record<string, unknown>;
    const all = policies[policy];
    if (!Array.isArray(all)) continue;
    const kept = [...all.keys()].filter((place) => !faulty.has(place));
    places.set(policy, kept);
    policies[policy] = kept.map((place) => all[place]);
  }
  return { rest: copy, places };
}
