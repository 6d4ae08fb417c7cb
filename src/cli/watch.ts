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

interface Given {
  readonly file: string;
  readonly with?: readonly string[];
  readonly policy?: string;
  readonly seed: number;
  readonly out?: string;
}

const SUFFIX = '.html';

/** Where the page goes: a policy that was named is named there, too, so that one does not replace another. */
function pathOf({ out, ...given }: Given): string {
  const { file, policy, seed } = given;
  const named = policy === undefined ? '' : `-${policy.replace(/[^\p{L}\p{N}_-]+/gu, '-')}`;
  const name = `${basename(file, extname(file))}${joiningFolder(given)}${named}-seed-${seed}${SUFFIX}`;
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
  const { trace } = traced(read.scenario, policy, given.seed);
  const words = [
    'watch',
    given.file,
    ...joiningWords(given),
    '--policy',
    policy,
    '--seed',
    String(given.seed),
  ];
  const page = watchPage({
    title: read.scenario.title,
    playback: playbackOf(trace, read.scenario),
    origins: {
      ...{ file: read.path, sha256: read.sha256, joined: joinedOf(read), modules: [], version: version() },
      ...{ seeds: String(given.seed), command: typed(words) },
    },
    program: readFileSync(new URL('../watch-page.js', import.meta.url), 'utf8'),
  });
  const written = folder.write(basename(path), page);
  const size = Math.ceil(Buffer.byteLength(page) / 1000);
  const told = `One file of ${size} kB: open it in a browser. It plays back policy "${policy}" under seed ${given.seed}, and needs no network.`;
  process.stdout.write(`Playback: ${written}\n${wrap(told, columns()).join('\n')}\n`);
  return EXIT.done;
}
