import { readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import type { Exercise } from '../exercise/exercise.ts';
import { settingText } from '../exercise/setting.ts';
import { failingEnds } from '../exercise/tried-out.ts';
import { classPage } from '../report/classroom/class-page.ts';
import { printable, wrap } from '../report/columns.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { readExercise } from './exercise-file.ts';
import { EXIT } from './exit-codes.ts';
import { breakable } from './interrupt.ts';
import { columns } from './look.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given {
  readonly file: string;
  readonly out?: string;
}

const SUFFIX = '.html';

function pathOf({ file, out }: Given): string {
  if (out === undefined) return join('reports', 'classroom', `${basename(file, extname(file))}${SUFFIX}`);
  if (extname(out).toLowerCase() === SUFFIX) return out;
  throw new UsageError(`--out "${out}": expected the name of a page, such as exercise.html`);
}

/** Says at which ends the line cannot run, since a class may be meant to find that. */
function warnOfEnds(exercise: Exercise): void {
  for (const { setting, why } of failingEnds(exercise)) {
    const told = `warning: at ${settingText(exercise, setting)} the line cannot run, and the page will say so: ${why}`;
    process.stderr.write(`${wrap(printable(told), columns()).join('\n')}\n`);
  }
}

/** Writes the page of an exercise, with the engine in it. */
export async function classroomCommand(given: Given): Promise<number> {
  const path = pathOf(given);
  const { exercise, sha256, text, scenario } = await breakable(() => readExercise(given.file));
  const program = readFileSync(new URL('../class-page.js', import.meta.url), 'utf8');
  const page = classPage({
    ...{ exercise, file: given.file, sha256, text, program, version: version() },
    scenario: scenario && { file: scenario.path, sha256: scenario.sha256 },
    command: ['classroom', given.file],
  });
  const written = new OutputFolder(dirname(path), 'file').write(basename(path), page);
  const size = Math.ceil(Buffer.byteLength(page) / 1000);
  const told = `One file of ${size} kB with the engine inside: open it in a browser, or hand it out. It needs no network and nothing installed.`;
  warnOfEnds(exercise);
  process.stdout.write(`Class page: ${written}\n${wrap(told, columns()).join('\n')}\n`);
  return EXIT.done;
}
