import type { Options } from 'yargs';

/** A command as the command line shows it; what it does is loaded when it is asked for. */
export interface Command {
  readonly name: string;
  readonly describe: string;
  /** The one word that it takes besides options: what it is called, what it is, and one there is. */
  readonly takes: { readonly name: string; readonly describe: string; readonly such: string };
  readonly options: Readonly<Record<string, Options>>;
  /** What to type behind `mendline`, and what that shows. */
  readonly example: readonly [command: string, meaning: string];
  readonly run: (given: never) => Promise<number>;
}

/** What most commands take. */
export const SCENARIO = {
  name: 'file',
  describe: 'scenario in YAML',
  such: 'a scenario, such as scenarios/tray-cell.yaml',
} as const;
