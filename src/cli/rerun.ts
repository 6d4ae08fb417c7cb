import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wrap } from '../report/columns.ts';
import { firstDifference } from '../report/first-difference.ts';
import { typed } from '../report/origin.ts';
import { type Recorded, recordedIn } from '../report/recorded.ts';
import { counted } from '../report/words.ts';
import { ChangedInputError } from './changed-input.ts';
import { EXIT } from './exit-codes.ts';
import { columns } from './look.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

const DOCUMENT = 'comparison.json';

interface Given {
  readonly report: string;
  readonly workers?: number;
  readonly out?: string;
}

/** The report's document: the file that is named, or the one in the folder that is named. */
function documentPath(report: string): string {
  if (!existsSync(report))
    throw new UsageError(`${report}: there is no such report; name a folder, such as reports/tray-cell`);
  if (!statSync(report).isDirectory()) return report;
  const path = join(report, DOCUMENT);
  if (!existsSync(path)) throw new UsageError(`${report}: there is no ${DOCUMENT} in this folder`);
  return path;
}

function readRecorded(path: string): Recorded {
  const recorded = recordedIn(readFileSync(path, 'utf8'));
  if (typeof recorded === 'string') throw new UsageError(`${path} cannot be rerun: ${recorded}`);
  if (recorded.command[0] !== 'compare')
    throw new UsageError(`${path} cannot be rerun: it is not by "compare", but by "${recorded.command[0]}"`);
  return recorded;
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

/**
 * Makes a report again by what it records of itself and compares both byte for byte. A document that is named by itself
 * is compared by itself, a folder with all that the command writes.
 */
export async function rerunCommand({ report, workers, out }: Given): Promise<number> {
  const path = documentPath(report);
  const whole = path !== report;
  const recorded = readRecorded(path);
  refuseChanged(recorded);
  if (out !== undefined && existsSync(out) && realpathSync(out) === realpathSync(join(path, '..')))
    throw new UsageError(`--out ${out} holds the report, which would be written over; name another folder`);
  const folder = out ?? mkdtempSync(join(tmpdir(), 'mendline-rerun-'));
  if (recorded.version !== version())
    say(
      `The report was made by mendline ${recorded.version}; this is ${version()}. What names the version ` +
        'differs in any case.',
    );
  const options = ['--out', folder, ...(workers === undefined ? [] : ['--workers', String(workers)])];
  const done = doAgain(recorded.command, options);
  say(typed(recorded.command));
  const code = await done;
  if (code !== EXIT.done) {
    // Runs that had finished may be kept there, as the command itself has said.
    if (out === undefined && filesIn(folder).length === 0) rmSync(folder, { recursive: true });
    console.error('mendline: the report was not made again, so nothing was compared');
    return code;
  }
  const made = whole ? filesIn(folder) : [DOCUMENT];
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
