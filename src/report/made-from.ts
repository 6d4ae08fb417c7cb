import type { PolicyModuleFile } from '../experiment/policy-module.ts';
import { type Joined, type JoinedDocument, joinedJson } from './joined.ts';
import { type Origin, typed } from './origin.ts';
import type { Origins } from './page-frame.ts';

interface ScenarioNamed {
  readonly file: string;
  readonly title: string;
  readonly sha256: string;
}

/** What a report was made from, enough to make it again. */
export interface MadeFrom {
  /** Of mendline. */
  readonly version: string;
  /** Words of the command line behind `mendline`, without those that leave the results alone. */
  readonly command: readonly string[];
  readonly scenario: ScenarioNamed;
  readonly joined?: readonly Joined[];
  readonly modules?: readonly PolicyModuleFile[];
}

/** What the data of every report begins with. */
export interface MadeFromDocument<Format extends string> {
  /** Changes its number when a reader of the older form would go wrong. */
  readonly format: Format;
  readonly version: string;
  readonly command: readonly string[];
  readonly scenario: ScenarioNamed;
  /** Left out where nothing was joined to the scenario. */
  readonly supplements?: readonly JoinedDocument[];
  /** Policies written as code; left out where there are none. */
  readonly policy_modules?: readonly {
    readonly policy: string;
    readonly file: string;
    readonly sha256: string;
  }[];
}

export const madeFromJson = <Format extends string>(
  format: Format,
  { version, command, scenario: { file, title, sha256 }, joined = [], modules = [] }: MadeFrom,
): MadeFromDocument<Format> => ({
  format,
  version,
  command,
  scenario: { file, title, sha256 },
  ...joinedJson(joined),
  ...(modules.length > 0 && {
    policy_modules: modules.map((of) => ({ policy: of.name, file: of.path, sha256: of.sha256 })),
  }),
});

/** The same as files show it that are no documents. */
export const originOf = (
  { version, command, scenario, joined = [], modules = [] }: MadeFrom,
  seeds: string,
): Origin => ({
  scenario: { file: scenario.file, sha256: scenario.sha256 },
  supplements: joined.map(({ file, sha256 }) => ({ file, sha256 })),
  modules: modules.map(({ path, sha256 }) => ({ file: path, sha256 })),
  ...{ version, command, seeds },
});

/** The same as pages show it. */
export const originsOf = (
  { version, command, scenario: { file, sha256 }, joined = [], modules = [] }: MadeFrom,
  seeds: string,
): Origins => ({ file, sha256, joined, modules, version, seeds, command: typed(command) });
