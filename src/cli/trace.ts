import { createHash, type Hash } from 'node:crypto';
import type { Trace } from '../line/trace/trace.ts';
import { wrap } from '../report/columns.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder, type Pieces } from '../report/output-folder.ts';
import { partText } from '../report/trace/part-text.ts';
import { runText } from '../report/trace/run-text.ts';
import { partJson, runJson, type TraceSource } from '../report/trace/trace-json.ts';
import { listed } from '../report/words.ts';
import { EXIT } from './exit-codes.ts';
import { columns } from './look.ts';
import { settledNote } from './settled-note.ts';
import { addedWords, type GivenRun, madeFromOf, runToTrace, runWords, traceOf } from './traced-run.ts';
import { UsageError } from './usage-error.ts';

interface Given extends GivenRun {
  readonly part?: number;
  readonly trueValues: boolean;
  readonly out?: string;
  readonly json: boolean;
}

/** The command that tells of a part but for the part, as short as it may be typed. */
function shortWords({ seed, policy, ...given }: Given): string[] {
  return [
    ...['trace', given.file, ...addedWords({ ...given, seed })],
    ...(policy === undefined ? [] : ['--policy', policy]),
    ...(seed === 1 ? [] : ['--seed', String(seed)]),
  ];
}

function refuseUnknown(part: number, { parts, seed, policy }: Trace): void {
  if (part <= parts.length) return;
  const there = parts.length === 0 ? 'no part is started' : `parts 1 to ${parts.length} are started`;
  throw new UsageError(`--part ${part} does not exist; under seed ${seed} and policy "${policy}" ${there}`);
}

function* hashed(pieces: Pieces, hash: Hash): Pieces {
  for (const piece of pieces) {
    hash.update(piece);
    yield piece;
  }
}

/** Writes the event log and returns the names of its files. */
async function writeLog(source: TraceSource, folder: OutputFolder, withTruth: boolean): Promise<string[]> {
  const { logFiles, logOrigin } = await import('../report/trace/log-files.ts');
  const sha256: Record<string, string> = {};
  for (const { name, content } of logFiles(source, withTruth)) {
    const hash = createHash('sha256');
    folder.write(name, hashed(content, hash));
    sha256[name] = hash.digest('hex');
  }
  folder.write('origin.json', logOrigin(source, sha256));
  return [...Object.keys(sha256), 'origin.json'];
}

/** Does one run, writes down what happens in it, and tells of one part or of all. */
export async function traceCommand(given: Given): Promise<number> {
  const { part, trueValues, json, out } = given;
  const run = await runToTrace(given);
  const { scenario } = run.read;
  const folder = out === undefined ? null : OutputFolder.tried(out);
  const trace = await traceOf(run, given.seed);
  if (part !== undefined) refuseUnknown(part, trace);
  const words = ['trace', ...runWords(given, run.policy)];
  const asked = part === undefined ? [] : ['--part', String(part)];
  const truth = trueValues ? ['--true-values'] : [];
  const width = columns();
  if (json) {
    const source = { trace, from: madeFromOf(run, [...words, ...asked, ...truth, '--json']) };
    const document = part === undefined ? runJson(source) : partJson(source, part, trueValues);
    process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
  } else if (part === undefined)
    process.stdout.write(runText(trace, scenario, width, typed(shortWords(given))) + settledNote(run.read));
  else process.stdout.write(partText(trace, scenario, part, { withTruth: trueValues, width }));
  if (folder === null) return EXIT.done;
  const source = { trace, from: madeFromOf(run, [...words, ...truth]) };
  const names = await writeLog(source, folder, trueValues);
  const told = wrap(`Event log: ${folder.path} with ${listed(names)}`, width);
  if (!json) process.stdout.write(`\n${told.join('\n')}\n`);
  return EXIT.done;
}
