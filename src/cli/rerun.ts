import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wrap } from '../report/columns.ts';
import { DOCUMENTS } from '../report/documents.ts';
import { firstDifference } from '../report/first-difference.ts';
import { typed } from '../report/origin.ts';
import { type Recorded, recordedIn } from '../report/recorded.ts';
import { counted, listed } from '../report/words.ts';
import { ChangedInputError } from './changed-input.ts';
import { EXIT } from './exit-codes.ts';
import { columns } from './look.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given {
  readonly report: string;
  readonly workers?: number;
  readonly out?: string;
}

/** What ends by time, too, unless told otherwise. */
const TIMED = ['--until-decided', '--half-width'];

/** A document of the report, where it lies and what the command calls it. */
interface Document {
  readonly path: string;
  readonly name: string;
  readonly recorded: Recorded;
}

function readRecorded(path: string): Recorded {
  const recorded = recordedIn(readFileSync(path, 'utf8'));
  if (typeof recorded === 'string') throw new UsageError(`${path} cannot be rerun: ${recorded}`);
  return recorded;
}

/** The document that is named, or those in the folder that is named: several commands may have written there. */
function documentsOf(report: string): Document[] {
  if (!existsSync(report))
    throw new UsageError(`${report}: there is no such report; name a folder, such as reports/tray-cell`);
  if (!statSync(report).isDirectory()) {
    const recorded = readRecorded(report);
    const { file } = DOCUMENTS.find(({ format }) => format === recorded.format)!;
    return [{ path: report, name: file, recorded }];
  }
  const names = DOCUMENTS.map(({ file }) => file);
  const found = names.filter((name) => existsSync(join(report, name)));
  if (found.length === 0) throw new UsageError(`${report}: in this folder there is none of ${listed(names)}`);
  return found.map((name) => {
    const path = join(report, name);
    return { path, name, recorded: readRecorded(path) };
  });
}

/** @throws ChangedInputError naming each file that is not what it was, with both hashes */
function refuseChanged({ scenario, supplements, policy_modules }: Recorded): void {
  const changed = [scenario, ...supplements, ...policy_modules].flatMap(({ file, sha256 }) => {
    if (!existsSync(file) || statSync(file).isDirectory())
      return [`${file}: there is no such file; rerun in the folder that the report was made from`];
    const now = createHash('sha256').update(readFileSync(file, 'utf8')).digest('hex');
    return now === sha256
      ? []
      : [`${file} has changed since the report was made; its SHA-256:\n  then ${sha256}\n  now  ${now}`];
  });
  if (changed.length > 0) throw new ChangedInputError(changed.join('\n'));
}

/** Does the command once more, as a process of its own, into a folder. Returns its exit code. */
function doAgain([command, ...words]: readonly string[], options: readonly string[]): Promise<number> {
  const program = fileURLToPath(new URL('../../bin/mendline.js', import.meta.url));
  // Apart from this process's group, so that Ctrl-C reaches it once, from here.
  const child = spawn(process.execPath, [program, command!, ...options, ...words], {
    detached: true,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const passOn = (signal: NodeJS.Signals) => child.kill(signal);
  process.on('SIGINT', passOn);
  process.on('SIGTERM', passOn);
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => {
      process.off('SIGINT', passOn);
      process.off('SIGTERM', passOn);
      resolve(code ?? EXIT.interrupted);
    });
  });
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

/** Makes each document of the report again, into a folder. Returns the exit code of the first that could not be made. */
async function makeAgain(documents: readonly Document[], options: readonly string[]): Promise<number> {
  for (const { recorded } of documents) {
    if (recorded.version !== version())
      say(
        `The report was made by mendline ${recorded.version}; this is ${version()}. What names the version ` +
          'differs in any case.',
      );
    // The time has had its say in what is recorded.
    const timed = TIMED.some((option) => recorded.command.includes(option));
    const done = doAgain(recorded.command, [...options, ...(timed ? ['--within', 'none'] : [])]);
    say(typed(recorded.command));
    const code = await done;
    if (code !== EXIT.done) return code;
  }
  return EXIT.done;
}

/**
 * Makes a report again by what it records of itself and compares both byte for byte. A document that is named by itself
 * is compared by itself, a folder with all that its commands write.
 */
export async function rerunCommand({ report, workers, out }: Given): Promise<number> {
  const documents = documentsOf(report);
  const [{ path, name: document }] = documents as [Document];
  const whole = path !== report;
  for (const { recorded } of documents) refuseChanged(recorded);
  if (out !== undefined && existsSync(out) && realpathSync(out) === realpathSync(join(path, '..')))
    throw new UsageError(`--out ${out} holds the report, which would be written over; name another folder`);
  const folder = out ?? mkdtempSync(join(tmpdir(), 'mendline-rerun-'));
  const options = ['--out', folder, ...(workers === undefined ? [] : ['--workers', String(workers)])];
  const code = await makeAgain(documents, options);
  if (code !== EXIT.done) {
    // Runs that had finished may be kept there, as the command itself has said.
    if (out === undefined && filesIn(folder).length === 0) rmSync(folder, { recursive: true });
    console.error('mendline: the report was not made again, so nothing was compared');
    return code;
  }
  const made = whole ? filesIn(folder) : [document];
  const pairs = made.map((name) => ({
    name: whole ? name : report,
    old: whole ? join(report, name) : report,
    now: join(folder, name),
  }));
  const different = compareFiles(pairs);
  const besides = whole ? filesIn(report).filter((name) => !made.includes(name)) : [];
  for (const name of besides) process.stdout.write(`${name}: the command does not write it; not compared\n`);
  if (out === undefined) rmSync(folder, { recursive: true, force: true });
  process.stdout.write('\n');
  if (different === 0) {
    say(made.length === 1 ? 'The file has the same bytes.' : `All ${made.length} files have the same bytes.`);
    return EXIT.done;
  }
  const keep =
    out === undefined ? '; --out FOLDER keeps what was made anew' : `; made anew they are in ${out}`;
  say(`${different} of ${counted(made.length, 'file')} not the same${keep}.`);
  return EXIT.differs;
}
