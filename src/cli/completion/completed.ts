import type { Command } from '../command.ts';
import { COMMANDS } from '../commands.ts';
import { KNOWN_VALUES, LISTS, PATHS } from './known-values.ts';
import { COMPLETION, SHELLS } from './shells.ts';

/** What may stand where somebody is typing: one of these words, a file, or what nobody can know. */
export type Completed = readonly string[] | 'files';

/** What a line says so far. */
interface Said {
  readonly words: readonly string[];
  readonly options: ReadonlyMap<string, readonly string[]>;
  /** The option that the next word belongs to. */
  readonly open: string | null;
}

function saidBy(before: readonly string[], { options: known }: Command): Said {
  const words: string[] = [];
  const options = new Map<string, string[]>();
  let open: string | null = null;
  const say = (option: string, value: string) => options.set(option, [...(options.get(option) ?? []), value]);
  for (const word of before) {
    const [, name, value] = /^--([^=]+)(?:=(.*))?$/s.exec(word) ?? [];
    if (open !== null) {
      say(open, word);
      open = null;
    } else if (name === undefined) words.push(word);
    else if (value === undefined && known[name]?.requiresArg === true) open = name;
    else say(name, value ?? '');
  }
  return { words, options, open };
}

/** Values of an option that begin as `typed` does. */
async function valuesOf(option: string, typed: string, { words, options }: Said): Promise<Completed> {
  if (PATHS.includes(option)) return 'files';
  const named = { file: words[0], with: options.get('with') ?? [] };
  const values = (await KNOWN_VALUES[option]?.(named)) ?? [];
  if (!LISTS.includes(option)) return values;
  const before = typed.slice(0, typed.lastIndexOf(',') + 1);
  return values.filter((value) => !before.split(',').includes(value)).map((value) => `${before}${value}`);
}

async function inCommand(command: Command, before: readonly string[], typed: string): Promise<Completed> {
  const said = saidBy(before, command);
  if (said.open !== null) return valuesOf(said.open, typed, said);
  const [, name, value] = /^--([^=]+)=(.*)$/s.exec(typed) ?? [];
  if (name !== undefined) {
    const values = await valuesOf(name, value!, said);
    return values === 'files' ? values : values.map((one) => `--${name}=${one}`);
  }
  if (said.words.length === 0 && !typed.startsWith('-')) return 'files';
  const once = (option: string) => command.options[option]!.array === true || !said.options.has(option);
  return [...Object.keys(command.options).filter(once), 'help'].map((option) => `--${option}`);
}

/**
 * What completes the last of these words.
 * @param words those behind `mendline`, the last as far as it is typed
 */
export async function completed(words: readonly string[]): Promise<Completed> {
  const typed = words.at(-1) ?? '';
  const [name, ...before] = words.slice(0, -1);
  const command = COMMANDS.find((one) => one.name === name);
  let found: Completed = [];
  if (name === undefined) found = [...COMMANDS.map((one) => one.name), COMPLETION, '--help', '--version'];
  else if (command) found = await inCommand(command, before, typed);
  else if (name === COMPLETION && before.length === 0) found = Object.keys(SHELLS);
  return found === 'files' ? found : found.filter((word) => word.startsWith(typed));
}
