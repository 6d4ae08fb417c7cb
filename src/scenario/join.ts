import type { Finding } from './problem.ts';
import { isMapping } from './raw.ts';
import { ENTRY_WORDS, SECTIONS } from './sections.ts';

type Mapping = Record<string, unknown>;

/** Plain data read from a file that is called `source`. */
interface File {
  readonly source: string;
  readonly raw: unknown;
}

interface Joined {
  /** The scenario's data with the entries of the supplements behind its own, section by section. */
  readonly raw: unknown;
  /** By supplement, the names that are there already. */
  readonly taken: readonly Finding[][];
  /** The supplement, by its number, that a finding in the joined data is about; undefined for the scenario itself. */
  readonly ownerOf: (finding: Finding) => number | undefined;
}

/** Joins supplements to the scenario of a line, in their order. */
export function join(line: File, supplements: readonly File[]): Joined {
  const taken: Finding[][] = supplements.map(() => []);
  const owners = new Map<string, number>();
  const ownerOf = ({ path: [section, name], key }: Finding) =>
    owners.get(`${String(section)} ${String(name ?? key)}`);
  if (!isMapping(line.raw) || supplements.length === 0) return { raw: line.raw, taken, ownerOf };
  const raw: Mapping = { ...line.raw };
  for (const section of SECTIONS) {
    // What is no mapping is refused where it stands.
    if (raw[section] !== undefined && !isMapping(raw[section])) continue;
    const entries: Mapping = { ...raw[section] };
    for (const [i, { raw: own }] of supplements.entries()) {
      const added = isMapping(own) ? own[section] : undefined;
      if (!isMapping(added)) continue;
      for (const [name, entry] of Object.entries(added)) {
        if (Object.hasOwn(entries, name)) {
          const owner = owners.get(`${section} ${name}`);
          const { source } = owner === undefined ? line : supplements[owner]!;
          const message = `"${name}" is ${ENTRY_WORDS[section]} of ${source} already; give this one another name`;
          taken[i]!.push({ path: [section], key: name, message });
        } else {
          entries[name] = entry;
          owners.set(`${section} ${name}`, i);
        }
      }
      raw[section] = entries;
    }
  }
  return { raw, taken, ownerOf };
}
