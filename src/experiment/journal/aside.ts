import { closeSync, existsSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { readJournal } from './contents.ts';
import { type Experiment, whyForeign } from './experiment.ts';

interface Seen {
  readonly experiment: Experiment | 'other' | null;
  readonly runs: number;
}

/** Null where there is no such file. */
function look(path: string): Seen | null {
  if (!existsSync(path)) return null;
  const fd = openSync(path, 'r');
  const runs = new Set<number>();
  try {
    const { experiment } = readJournal(fd, () => (run) => runs.add(run));
    return { experiment, runs: runs.size };
  } finally {
    closeSync(fd);
  }
}

function freeName(path: string): string {
  let number = 1;
  while (existsSync(`${path}.${number}`)) number++;
  return `${path}.${number}`;
}

/** Puts a file aside that stands where a journal is to begin, unless there is no run in it. Says so. */
export function putAside(path: string, experiment: Experiment): string[] {
  const seen = look(path);
  if (seen === null || (seen.experiment !== 'other' && seen.runs === 0)) return [];
  const aside = freeName(path);
  renameSync(path, aside);
  if (seen.experiment === 'other' || seen.experiment === null)
    return [`${path} was no journal; it is now ${aside}`];
  const why = whyForeign(seen.experiment, experiment);
  const use = why === null ? '--resume would have gone on from it' : why;
  return [
    `${path} held ${seen.runs} ${seen.runs === 1 ? 'run' : 'runs'} of an experiment that was not finished (${use}); it is now ${aside}`,
  ];
}

/** Removes journals that were put aside and are of an experiment that is now finished. */
export function removeAside(folder: string, name: string, finished: Experiment): void {
  const numbered = readdirSync(folder).filter(
    (other) => other.startsWith(`${name}.`) && /^\d+$/.test(other.slice(name.length + 1)),
  );
  for (const other of numbered) {
    const path = join(folder, other);
    const experiment = look(path)?.experiment;
    if (experiment && experiment !== 'other' && whyForeign(experiment, finished) === null)
      rmSync(path, { force: true });
  }
}
