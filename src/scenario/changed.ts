import { suggestion } from './nearest.ts';
import { isMapping, type Raw } from './raw.ts';

/** A value that a scenario has somewhere else than where it is written. */
export interface Change {
  /** Its place: the keys that lead to it, and numbers of list entries from 0, with `/` between them. */
  readonly at: string;
  /** As it would be written in YAML. */
  readonly is: Raw;
}

/** `stations/trimming/buffer = 8`. */
export const changeText = ({ at, is }: Change): string =>
  `${at} = ${typeof is === 'string' ? is : JSON.stringify(is)}`;

/** A change names a place that the scenario does not have, or gives a value that cannot stand there. */
export class ChangeError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'ChangeError';
  }
}

const keysOf = (inner: Raw): string[] =>
  Array.isArray(inner) ? inner.map((_, i) => String(i)) : isMapping(inner) ? Object.keys(inner) : [];

const within = (keys: readonly string[]) => (keys.length > 0 ? `"${keys.join('/')}"` : 'the scenario');

/** What stands at the place; undefined where only its last key is missing, so that it may be added. */
export function writtenAt(raw: Raw, at: string): Raw | undefined {
  const keys = at.split('/');
  let inner = raw;
  for (const [depth, key] of keys.entries()) {
    const last = depth === keys.length - 1;
    const known = keysOf(inner);
    if (known.includes(key)) inner = (inner as Record<string, Raw>)[key]!;
    else if (last && isMapping(inner) && key !== '') return undefined;
    else {
      const why =
        known.length === 0 ? `; ${within(keys.slice(0, depth))} has nothing inside` : suggestion(key, known);
      throw new ChangeError(`"${at}": there is no "${key}" in ${within(keys.slice(0, depth))}${why}`);
    }
  }
  return inner;
}

function set(inner: Raw, [key, ...rest]: readonly string[], is: Raw): Raw {
  const value = (old: Raw | undefined) => (rest.length === 0 ? is : set(old!, rest, is));
  if (Array.isArray(inner)) return inner.map((old, i) => (String(i) === key ? value(old) : old));
  const mapping = inner as { readonly [key: string]: Raw };
  return { ...mapping, [key!]: value(mapping[key!]) };
}

/**
 * The data of a scenario with other values; what was given stays as it is.
 * @throws ChangeError
 */
export function changedRaw(raw: Raw, changes: readonly Change[]): Raw {
  return changes.reduce((sofar, { at, is }) => {
    writtenAt(sofar, at);
    return set(sofar, at.split('/'), is);
  }, raw);
}
