/** What the runs of a report were made from, enough to make them again. */
export interface Origin {
  readonly scenario: NamedFile;
  /** Files that were joined to the scenario. */
  readonly supplements: readonly NamedFile[];
  /** Files with policies written as code. */
  readonly modules: readonly NamedFile[];
  readonly version: string;
  /** The words of the command line behind `mendline`, without those that leave the results alone. */
  readonly command: readonly string[];
  /** Such as `1 to 40`. */
  readonly seeds: string;
}

interface NamedFile {
  readonly file: string;
  readonly sha256: string;
}

const quoted = (word: string) =>
  /^[\w./=,:+-]+$/.test(word) ? word : `"${word.replace(/["\\$`]/g, '\\$&')}"`;

/** The command as it is typed. */
export const typed = (command: readonly string[]): string => ['mendline', ...command].map(quoted).join(' ');

/** Names with their values, in one order, for any kind of file. */
export function originRows(origin: Origin): (readonly [string, string])[] {
  const file = (name: string, { file, sha256 }: NamedFile): (readonly [string, string])[] => [
    [name, file],
    [`SHA-256 of ${name}`, sha256],
  ];
  const { supplements, modules } = origin;
  const numbered = (name: string, i: number, all: readonly NamedFile[]) =>
    all.length > 1 ? `${name} ${i + 1}` : name;
  return [
    ...file('scenario', origin.scenario),
    ...supplements.flatMap((one, i) => file(numbered('supplement', i, supplements), one)),
    ...modules.flatMap((one, i) => file(numbered('policy module', i, modules), one)),
    ['version', origin.version],
    ['seeds', origin.seeds],
    ['command', typed(origin.command)],
  ];
}
