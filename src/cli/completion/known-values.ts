import { readFileSync } from 'node:fs';

/** The files that the line names so far. */
export interface Named {
  readonly file: string | undefined;
  readonly with: readonly string[];
}

type Sections = Readonly<Record<string, unknown>>;

/** The sections of a file, none where it cannot be read: who is typing is not to be told so now. */
async function sectionsOf(path: string): Promise<Sections> {
  const { readYaml } = await import('../../scenario/yaml-text.ts');
  try {
    const read = readYaml(readFileSync(path, 'utf8'));
    return 'raw' in read && typeof read.raw === 'object' && read.raw !== null ? (read.raw as Sections) : {};
  } catch {
    return {};
  }
}

/** The names of what the files hold under one key. */
async function namesUnder(section: string, { file, with: others }: Named): Promise<string[]> {
  const paths = file === undefined ? others : [file, ...others];
  const all = await Promise.all(paths.map(sectionsOf));
  const keys = all.flatMap(({ [section]: entries }) =>
    typeof entries === 'object' && entries !== null && !Array.isArray(entries) ? Object.keys(entries) : [],
  );
  return [...new Set(keys)];
}

const policies = (named: Named) => namesUnder('policies', named);

/** What an option may say, by its name, where that is known. */
export const KNOWN_VALUES: Readonly<Record<string, (named: Named) => Promise<readonly string[]>>> = {
  policy: policies,
  only: policies,
  case: async (named) => {
    const cases = await namesUnder('cases', named);
    return cases.length > 0 ? cases : namesUnder('disturbances', named);
  },
  sizing: (named) => namesUnder('sizings', named),
  by: async () => (await import('../../line/measures.ts')).MEASURES.map(({ name }) => name),
  also: async () => (await import('../also.ts')).ALSO_KINDS,
  design: async () => (await import('../../experiment/varied/design.ts')).DESIGNS,
  procedure: async () => (await import('../../experiment/selection/settings.ts')).PROCEDURES,
};

/** Options that take several values with commas between. */
export const LISTS: readonly string[] = ['also'];
/** Options that name a file or a folder. */
export const PATHS: readonly string[] = ['with', 'policy-module', 'out'];
