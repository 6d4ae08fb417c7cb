import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wrap } from '../report/columns.ts';
import { firstDifference } from '../report/first-difference.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import type { Recorded } from '../report/recorded.ts';
import { counted } from '../report/words.ts';
import { ChangedInputError } from './changed-input.ts';
import { EXIT } from './exit-codes.ts';
import { heeded } from './interrupt.ts';
import { columns } from './look.ts';
import { type Document, madeBefore } from './made-before.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given {
  readonly report: string;
  readonly workers?: number;
  readonly out?: string;
}

/** What ends by time, too, unless told otherwise. */
const TIMED = ['--until-decided', '--half-width'];

/** @throws ChangedInputError naming each file that is not what it was, with both hashes */
function refuseChanged({ inputs }: Recorded): void {
  const changed = inputs.flatMap(({ file, sha256 }) => {
    if (!existsSync(file) || statSync(file).isDirectory())
      return [`${file}: there is no such file; rerun in the folder that the report was made from`];
    const now = createHash('sha256').update(readFileSync(file, 'utf8')).digest('hex');
    return now === sha256
      ? []
      : [`${file} has changed since the report was made; its SHA-256:\n  then ${sha256}\n  now  ${now}`];
  });
  if (changed.length > 0) throw new ChangedInputError(changed.join('\n'));
}

/** Does the command once more, as a process of its own. Returns its exit code. */
function doAgain(
  [command, ...words]: readonly string[],
  options: readonly string[],
  output: number | 'ignore',
): Promise<number> {
  const program = fileURLToPath(new URL('../../bin/mendline.js', import.meta.url));
  // Apart from this process's group, so that Ctrl-C reaches it once, from here.
  const child = spawn(process.execPath, [program, command!, ...options, ...words], {
    detached: true,
    stdio: ['ignore', output, 'inherit'],
  });
  const passOn = (signal: NodeJS.Signals) => child.kill(signal);
  process.on('SIGINT', passOn);
  process.on('SIGTERM', passOn);
  return heeded(
    () =>
      new Promise((resolve, reject) => {
        child.once('error', reject);
        child.once('close', (code) => {
          process.off('SIGINT', passOn);
          process.off('SIGTERM', passOn);
          resolve(code ?? EXIT.interrupted);
        });
      }),
  );
}

/** Every file of a folder and those below, by its path within, in order. */
const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .split(sep)
        .join('/'),
    )
    .sort();

/** Compares the files byte for byte, says of each what was found, and returns how many are not the same. */
function compareFiles(pairs: readonly { name: string; old: string; now: string }[]): number {
  let different = 0;
  for (const { name, old, now } of pairs) {
    const found = existsSync(old)
      ? firstDifference(readFileSync(old), readFileSync(now))
      : ['is not in the report'];
    if (found) different++;
    process.stdout.write(`${name}: ${(found ?? ['same bytes']).join('\n')}\n`);
  }
  return different;
}

function say(text: string): void {
  process.stdout.write(`${wrap(text, columns()).join('\n')}\n`);
}

/** Makes one document again, in a folder. */
async function makeOne({ name, recorded }: Document, folder: string, workers?: number): Promise<number> {
  const { command, kind } = recorded;
  const place = join(folder, name);
  // The time has had its say in what is recorded.
  const timed = TIMED.some((option) => command.includes(option));
  const options = [
    ...(kind.goesTo === 'output' ? [] : ['--out', kind.goesTo === 'folder' ? folder : place]),
    ...(workers === undefined || !kind.workers ? [] : ['--workers', String(workers)]),
    ...(timed ? ['--within', 'none'] : []),
  ];
  if (kind.goesTo !== 'output') return doAgain(command, options, 'ignore');
  new OutputFolder(folder);
  const output = openSync(place, 'w');
  const code = await doAgain(command, options, output).finally(() => closeSync(output));
  if (code !== EXIT.done) rmSync(place);
  return code;
}

/** Makes each document of the report again. Returns the exit code of the first that could not be made. */
async function makeAgain(documents: readonly Document[], folder: string, workers?: number): Promise<number> {
  for (const document of documents) {
    const { recorded } = document;
    if (recorded.version !== version())
      say(
        `The report was made by mendline ${recorded.version}; this is ${version()}. What names the version ` +
          'differs in any case.',
      );
    const done = makeOne(document, folder, workers);
    say(typed(recorded.command));
    const code = await done;
    if (code !== EXIT.done) return code;
  }
  return EXIT.done;
}

/** Says what came of the comparison, and returns the exit code. */
function conclude(different: number, files: number, out: string | undefined): number {
  process.stdout.write('\n');
  if (different === 0) {
    say(files === 1 ? 'The file has the same bytes.' : `All ${files} files have the same bytes.`);
    return EXIT.done;
  }
  const keep =
    out === undefined ? '; --out FOLDER keeps what was made anew' : `; made anew they are in ${out}`;
  say(`${different} of ${counted(files, 'file')} not the same${keep}.`);
  return EXIT.differs;
}

/**
 * Makes again what records how it was made, and compares both byte for byte. A file that is named by itself is compared
 * by itself, a folder with all that its commands write.
 */
export async function rerunCommand({ report, workers, out }: Given): Promise<number> {
  const { documents, folder, file } = madeBefore(report);
  for (const { recorded } of documents) refuseChanged(recorded);
  if (out !== undefined && existsSync(out) && realpathSync(out) === realpathSync(folder ?? dirname(report)))
    throw new UsageError(`--out ${out} holds the report, which would be written over; name another folder`);
  const anew = out ?? mkdtempSync(join(tmpdir(), 'mendline-rerun-'));
  const code = await makeAgain(documents, anew, workers);
  if (code !== EXIT.done) {
    // Runs that had finished may be kept there, as the command itself has said.
    if (out === undefined && filesIn(anew).length === 0) rmSync(anew, { recursive: true });
    console.error('mendline: the report was not made again, so nothing was compared');
    return code;
  }
  const made = filesIn(anew);
  if (file !== null && !made.includes(file)) {
    if (out === undefined) rmSync(anew, { recursive: true });
    throw new UsageError(`${report} cannot be compared: the command writes no ${file}`);
  }
  const pairs = (file === null ? made : [file]).map((name) => ({
    name: folder === null ? report : name,
    old: folder === null ? report : join(folder, name),
    now: join(anew, name),
  }));
  const different = compareFiles(pairs);
  const besides = folder === null ? [] : filesIn(folder).filter((name) => !made.includes(name));
  for (const name of besides) process.stdout.write(`${name}: the command does not write it; not compared\n`);
  if (out === undefined) rmSync(anew, { recursive: true, force: true });
  return conclude(different, pairs.length, out);
}
