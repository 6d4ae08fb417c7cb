import type { z } from 'zod';
import type { Finding, Path } from './problem.ts';

type Issue = z.core.$ZodIssue;

function valueAt(raw: unknown, path: Path): unknown {
  return path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown> | null)?.[key], raw);
}

function isMapping(value: unknown): boolean {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function findingsOf(issue: Issue, raw: unknown, base: Path): Finding[] {
  const path = [...base, ...issue.path];
  const at = valueAt(raw, path);
  switch (issue.code) {
    case 'unrecognized_keys':
      // One line of the message for each key, in order.
      return issue.message.split('\n').map((message, i) => ({ path, key: issue.keys[i]!, message }));
    case 'invalid_union': {
      // A choice between a mapping and something shorter: speak of the form that was tried.
      const [mapping, other] = issue.errors;
      const chosen = isMapping(at) ? mapping : (other ?? mapping);
      if (!chosen || chosen.length === 0) return [{ path, message: issue.message }];
      return chosen.flatMap((inner) => findingsOf(inner as Issue, raw, path));
    }
    case 'invalid_key':
      return issue.issues.map((inner) => ({
        path: path.slice(0, -1),
        key: String(path.at(-1)),
        message: inner.message,
      }));
    default: {
      const key = path.at(-1);
      const message =
        at === undefined && typeof key === 'string' ? `"${key}" is missing: ${issue.message}` : issue.message;
      return [{ path, message }];
    }
  }
}

/** What a failed validation found, with the issues of alternatives unfolded. */
export function findings(error: z.ZodError, raw: unknown): Finding[] {
  return error.issues.flatMap((issue) => findingsOf(issue, raw, []));
}

/**
 * A copy of `raw` without the entries that hold findings: a station with a problem goes whole, so that what is
 * left can be checked for cross references. Undefined when a finding concerns the top level itself.
 */
export function withoutFaulty(raw: unknown, found: readonly Finding[]): unknown {
  const copy = structuredClone(raw) as Record<PropertyKey, unknown>;
  if (!isMapping(copy)) return undefined;
  for (const { path, key } of found) {
    const [section, name] = key === undefined ? path : [...path, key];
    if (section === undefined) return undefined;
    if (name === undefined && key !== undefined) {
      delete copy[section];
      continue;
    }
    const entries = copy[section];
    if (name === undefined || !isMapping(entries)) return undefined;
    delete (entries as Record<PropertyKey, unknown>)[name];
  }
  return copy;
}
