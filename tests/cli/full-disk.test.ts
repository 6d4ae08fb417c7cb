import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Ended, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

const command = join(import.meta.dirname, '..', '..', 'bin', 'mendline.js');

/** Runs the command where no file may grow beyond so many blocks, which stops a record in its middle as a full disk does. */
function limited(blocks: number, args: readonly string[]): Promise<Ended> {
  const words = ['-c', `ulimit -f ${blocks} && exec "$@"`, 'sh', process.execPath, command, ...args];
  return ended(spawn('sh', words, { cwd: at.path }));
}

const report = (folder: string) => {
  const path = join(at.path, folder);
  return Object.fromEntries(readdirSync(path).map((name) => [name, readFileSync(join(path, name), 'utf8')]));
};

it.runIf(process.platform === 'linux')(
  'a disk that gets full ends the runs in a sentence, exits 5, and loses none of those that had finished',
  async () => {
    const path = at.file('cell.yaml', quick());
    const words = ['compare', path, '--seeds', '10'];
    const whole = await at.mendline([...words, '--out', 'whole']);
    const journal = join(at.path, 'a', 'runs.journal');

    // First no room for all runs, then for these, but not for the report.
    for (const [blocks, what] of [
      [
        40,
        /^mendline: \S+runs\.journal: a file may not be as large as that; mend that, or choose another folder/m,
      ],
      [160, /^mendline: a: a file may not be as large as that; choose another folder/m],
    ] as const) {
      const { code, err } = await limited(blocks, [...words, '--out', 'a', '--resume']);
      expect({ code, err }).toMatchObject({ code: 5, err: expect.stringMatching(what) });
      expect(err).toContain('runs.journal; the same command with --resume goes on from there.');
      const left = readFileSync(journal, 'utf8');
      expect(left.endsWith('\n')).toBe(true);
      const runs = left.trimEnd().split('\n').length - 1;
      expect(runs).toBeGreaterThan(0);
      if (blocks === 40) expect(runs).toBeLessThan(20);
      else expect(runs).toBe(20);
      expect(readdirSync(join(at.path, 'a'))).not.toContain('comparison.html');
    }
    const { code, out, err } = await at.mendline([...words, '--out', 'a', '--resume']);
    expect({ code, out }).toEqual({
      code: 0,
      out: whole.out.replace(join('whole', 'comparison'), join('a', 'comparison')),
    });
    expect(err).toContain('20 of 20 runs are there');
    expect(report('a')).toEqual(report('whole'));
  },
  60_000,
);
