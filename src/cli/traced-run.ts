import type { SettledFile } from '../experiment/settled.ts';
import { traced, tracedApart } from '../experiment/traced.ts';
import type { Trace } from '../line/trace/trace.ts';
import type { MadeFrom } from '../report/made-from.ts';
import { suggestion } from '../scenario/nearest.ts';
import { breakable, heeded } from './interrupt.ts';
import { joinedOf, joiningWords } from './joining.ts';
import { type GivenModules, type Modules, modulesOf } from './modules.ts';
import { readSettled } from './settled-file.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

/** Which run is to be traced. */
export interface GivenRun extends GivenModules {
  readonly file: string;
  readonly with?: readonly string[];
  readonly policy?: string;
  readonly seed: number;
}

/** What is known of that run before it is done. */
export interface RunToTrace {
  readonly read: SettledFile;
  readonly modules: Modules;
  readonly policy: string;
}

/** What is joined to the scenario, as words of the command line. */
export const addedWords = ({ policyModule = [], ...given }: GivenRun): string[] => [
  ...joiningWords({ with: given.with ?? [] }),
  ...policyModule.flatMap((path) => ['--policy-module', path]),
];

/** The words of the command line that say which run it is, the policy always named. */
export const runWords = (given: GivenRun, policy: string): string[] => [
  ...[given.file, ...addedWords(given), '--policy', policy, '--seed', String(given.seed)],
];

/** The policy that is asked for, else that of the first policy module, else the first. */
function policyOf({ policies, files }: Modules, asked: string | undefined): string {
  const names = policies.map(({ name }) => name);
  const policy = asked ?? files[0]?.name ?? names[0]!;
  if (names.includes(policy)) return policy;
  throw new UsageError(`--policy "${policy}" is not in the scenario${suggestion(policy, names)}`);
}

/** Reads what the run is of. */
export async function runToTrace(given: GivenRun): Promise<RunToTrace> {
  const read = await readSettled(given);
  const modules = await modulesOf(given, read.scenario);
  return { read, modules, policy: policyOf(modules, given.policy) };
}

/** Does the run and writes down what happens in it. */
export async function traceOf({ read, modules, policy }: RunToTrace, seed: number): Promise<Trace> {
  const { files, timeout } = modules;
  if (!files.some(({ name }) => name === policy))
    return (await breakable(() => traced(read.scenario, policy, seed))).trace;
  return heeded((signal) =>
    tracedApart(read.scenario, policy, seed, { modules: files, moduleTimeout: timeout, signal }),
  );
}

/** What the run was made from. */
export const madeFromOf = ({ read, modules }: RunToTrace, command: readonly string[]): MadeFrom => ({
  ...{ version: version(), command, joined: joinedOf(read), modules: modules.files },
  scenario: { file: read.path, title: read.scenario.title, sha256: read.sha256 },
});
