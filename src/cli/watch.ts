import { readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { readScenario } from '../experiment/scenario-file.ts';
import { traced } from '../experiment/traced.ts';
import { wrap } from '../report/columns.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { playbackOf } from '../report/watch/playback-of.ts';
import { watchPage } from '../report/watch/watch-page.ts';
import { EXIT } from './exit-codes.ts';
import { joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { columns } from './look.ts';
import { policyOf } from './trace.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';
import { beginningOf, sizeNote } from './watch-size.ts';

interface Given {
  readonly file: string;
  readonly with?: readonly string[];
  readonly policy?: string;
  readonly seed: number;
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
export function watchCommand(given: Given): number {
  const path = pathOf(given);
  const read = readScenario(given.file, given.with);
  const policy = policyOf(read, given);
  const folder = new OutputFolder(dirname(path));
  const scenario = beginningOf(read.scenario, given.hours);
  const { trace } = traced(scenario, policy, given.seed);
  const words = [
    'watch',
    given.file,
    ...joiningWords(given),
    '--policy',
    policy,
    '--seed',
    String(given.seed),
    ...(given.hours === undefined ? [] : ['--hours', String(given.hours)]),
  ];
  const page = watchPage({
    title: scenario.title,
    playback: playbackOf(trace, scenario),
    origins: {
      ...{ file: read.path, sha256: read.sha256, joined: joinedOf(read), modules: [], version: version() },
      ...{ seeds: String(given.seed), command: typed(words) },
    },
    program: readFileSync(new URL('../watch-page.js', import.meta.url), 'utf8'),
  });
  const size = Buffer.byteLength(page);
  const note = sizeNote(scenario, size);
  const written = folder.write(basename(path), page);
  const told = `One file of ${Math.ceil(size / 1000)} kB: open it in a browser. It plays back policy "${policy}" under seed ${given.seed}, and needs no network.${note}`;
  process.stdout.write(`Playback: ${written}\n${wrap(told, columns()).join('\n')}\n`);
  return EXIT.done;
}
