import { readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { wrap } from '../report/columns.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { playbackOf } from '../report/watch/playback-of.ts';
import { watchPage } from '../report/watch/watch-page.ts';
import { EXIT } from './exit-codes.ts';
import { joiningFolder } from './joining.ts';
import { columns } from './look.ts';
import { type GivenRun, madeFromOf, runToTrace, runWords, traceOf } from './traced-run.ts';
import { UsageError } from './usage-error.ts';
import { beginningOf, sizeNote } from './watch-size.ts';

interface Given extends GivenRun {
  readonly hours?: number;
  readonly out?: string;
}

const SUFFIX = '.html';

/** Where the page goes: a policy that was named is named there, too, so that one does not replace another. */
function pathOf({ out, ...given }: Given): string {
  const { file, policy, seed, hours } = given;
  const named = policy === undefined ? '' : `-${policy.replace(/[^\p{L}\p{N}_-]+/gu, '-')}`;
  const first = hours === undefined ? '' : `-first-${hours}-h`;
  const name = `${basename(file, extname(file))}${joiningFolder(given)}${named}-seed-${seed}${first}${SUFFIX}`;
  if (out === undefined) return join('reports', 'watch', name);
  if (extname(out).toLowerCase() === SUFFIX) return out;
  throw new UsageError(`--out "${out}": expected the name of a page, such as run.html`);
}

/** Does one run, and writes a page that plays it back. */
export async function watchCommand(given: Given): Promise<number> {
  const path = pathOf(given);
  const run = await runToTrace(given);
  const folder = OutputFolder.tried(dirname(path), 'file');
  const scenario = beginningOf(run.read.scenario, given.hours);
  const trace = await traceOf({ ...run, read: { ...run.read, scenario } }, given.seed);
  const hours = given.hours === undefined ? [] : ['--hours', String(given.hours)];
  const page = watchPage({
    playback: playbackOf(trace, scenario),
    from: madeFromOf(run, ['watch', ...runWords(given, run.policy), ...hours]),
    program: readFileSync(new URL('../watch-page.js', import.meta.url), 'utf8'),
  });
  const size = Buffer.byteLength(page);
  const note = sizeNote(scenario, size);
  const written = folder.write(basename(path), page);
  const told = `One file of ${Math.ceil(size / 1000)} kB: open it in a browser. It plays back policy "${run.policy}" under seed ${given.seed}, and needs no network.${note}`;
  process.stdout.write(`Playback: ${written}\n${wrap(told, columns()).join('\n')}\n`);
  return EXIT.done;
}
