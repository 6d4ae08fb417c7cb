import { basename, extname } from 'node:path';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import type { Joined } from '../report/joined.ts';
import { suggestion } from '../scenario/nearest.ts';
import type { PolicySpec } from '../scenario/scenario.ts';
import type { GivenModules, Modules } from './modules.ts';
import { UsageError } from './usage-error.ts';

/** What is joined to the scenario, and which of the policies are wanted. */
export interface Joining {
  readonly with?: readonly string[];
  readonly only?: readonly string[];
}

/** The first policy, those named and those of policy modules, or all where none is named, in their order. */
export function chosenPolicies(
  { policies, files }: Pick<Modules, 'policies' | 'files'>,
  { only = [] }: Joining,
): readonly PolicySpec[] {
  const names = policies.map(({ name }) => name);
  for (const name of only)
    if (!names.includes(name))
      throw new UsageError(`--only "${name}" is not in the scenario${suggestion(name, names)}`);
  if (only.length === 0) return policies;
  const wanted = [...only, ...files.map(({ name }) => name)];
  return policies.filter(({ name }, i) => i === 0 || wanted.includes(name));
}

/** The supplements as reports show them. */
export const joinedOf = ({ supplements }: ScenarioFile): Joined[] =>
  supplements.map(({ path, ...rest }) => ({ file: path, ...rest }));

/** The options as the words of a command line. */
export function joiningWords({ with: files = [], only = [] }: Joining): string[] {
  return [...files.flatMap((file) => ['--with', file]), ...only.flatMap((name) => ['--only', name])];
}

/** How many supplements the name of a folder names. */
const NAMED = 3;

/** What the name of a report's folder says of it, so that one with supplements does not replace that of the scenario alone. */
export function joiningFolder({
  with: given = [],
  policyModule = [],
  only = [],
}: Joining & GivenModules): string {
  const files = [...given, ...policyModule];
  const names = [...files.map((file) => basename(file, extname(file))), ...only];
  if (names.length === 0) return '';
  const more = names.length > NAMED ? `+${names.length - NAMED}-more` : '';
  const plain = names.slice(0, NAMED).map((name) => name.replace(/[^\p{L}\p{N}_-]+/gu, '-'));
  return `${files.length > 0 ? '-with' : '-only'}-${plain.join('+')}${more}`;
}
