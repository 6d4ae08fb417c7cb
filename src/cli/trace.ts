import { createHash } from 'node:crypto';
import { readScenario, type ScenarioFile } from '../experiment/scenario-file.ts';
import { traced } from '../experiment/traced.ts';
import type { Trace } from '../line/trace/trace.ts';
import { wrap } from '../report/columns.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { partText } from '../report/trace/part-text.ts';
import { runText } from '../report/trace/run-text.ts';
import { partJson, runJson, type TraceSource } from '../report/trace/trace-json.ts';
import { listed } from '../report/words.ts';
import { suggestion } from '../scenario/nearest.ts';
import { EXIT } from './exit-codes.ts';
import { joinedOf, joiningWords } from './joining.ts';
import { columns } from './look.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given {
  readonly file: string;
  readonly with?: readonly string[];
  readonly policy?: string;
  readonly seed: number;
  readonly part?: number;
  readonly trueValues: boolean;
  readonly out?: string;
  readonly json: boolean;
}

/** The words of the command but for the part, the policy always named. */
function wordsOf({ file, seed, ...given }: Given, policy: string): string[] {
  return ['trace', file, ...joiningWords(given), '--policy', policy, '--seed', String(seed)];
}

/** The same as short as it may be typed. */
function shortWords({ file, seed, policy, ...given }: Given): string[] {
  return [
    ...['trace', file, ...joiningWords(given)],
    ...(policy === undefined ? [] : ['--policy', policy]),
    ...(seed === 1 ? [] : ['--seed', String(seed)]),
  ];
}

/** The policy that is asked for, else the first. */
export function policyOf({ scenario }: ScenarioFile, { policy }: Pick<Given, 'policy'>): string {
  const names = scenario.policies.map(({ name }) => name);
  if (policy === undefined) return names[0]!;
  if (names.includes(policy)) return policy;
  throw new UsageError(`--policy "${policy}" is not in the scenario${suggestion(policy, names)}`);
}

function refuseUnknown(part: number, { parts, seed, policy }: Trace): void {
  if (part <= parts.length) return;
  const there = parts.length === 0 ? 'no part is started' : `parts 1 to ${parts.length} are started`;
  throw new UsageError(`--part ${part} does not exist; under seed ${seed} and policy "${policy}" ${there}`);
}

function sourceOf(read: ScenarioFile, trace: Trace, command: readonly string[]): TraceSource {
  const { path, sha256, scenario } = read;
  return {
    ...{ trace, title: scenario.title },
    origin: {
      scenario: { file: path, sha256 },
      supplements: joinedOf(read).map(({ file, sha256 }) => ({ file, sha256 })),
      ...{ modules: [], version: version(), command, seeds: String(trace.seed) },
    },
  };
}

/** Writes the event log and returns the names of its files. */
async function writeLog(source: TraceSource, folder: OutputFolder, withTruth: boolean): Promise<string[]> {
  const { logFiles, logOrigin } = await import('../report/trace/log-files.ts');
  const sha256: Record<string, string> = {};
  for (const { name, content } of logFiles(source, withTruth)) {
    folder.write(name, content);
    sha256[name] = createHash('sha256').update(content).digest('hex');
  }
  folder.write('origin.json', logOrigin(source, sha256));
  return [...Object.keys(sha256), 'origin.json'];
}

/** Does one run, writes down what happens in it, and tells of one part or of all. */
export async function traceCommand(given: Given): Promise<number> {
  const { part, trueValues, json, out } = given;
  const read = readScenario(given.file, given.with);
  const policy = policyOf(read, given);
  const folder = out === undefined ? null : new OutputFolder(out);
  const { trace } = traced(read.scenario, policy, given.seed);
  if (part !== undefined) refuseUnknown(part, trace);
  const words = wordsOf(given, policy);
  const asked = part === undefined ? [] : ['--part', String(part)];
  const truth = trueValues ? ['--true-values'] : [];
  const width = columns();
  if (json) {
    const source = sourceOf(read, trace, [...words, ...asked, ...truth, '--json']);
    const document = part === undefined ? runJson(source) : partJson(source, part, trueValues);
    process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
  } else if (part === undefined)
    process.stdout.write(runText(trace, read.scenario, width, typed(shortWords(given))));
  else process.stdout.write(partText(trace, read.scenario, part, { withTruth: trueValues, width }));
  if (folder === null) return EXIT.done;
  const names = await writeLog(sourceOf(read, trace, [...words, ...truth]), folder, trueValues);
  const told = wrap(`Event log: ${folder.path} with ${listed(names)}`, width);
  if (!json) process.stdout.write(`\n${told.join('\n')}\n`);
  return EXIT.done;
}
