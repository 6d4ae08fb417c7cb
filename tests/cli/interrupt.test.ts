import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DISTURBED, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

describe('an interrupted comparison', () => {
  it('exits 130, keeps a row for each run that finished, and a later one clears them away', async () => {
    const path = at.file('cell.yaml', quick());
    const kept = join(at.path, 'report', 'unfinished-runs.csv');
    // Too many runs to finish: the signal comes long before.
    const child = at.start(['compare', path, '--seeds', '10000', '--out', 'report']);
    const end = ended(child);
    const journal = join(at.path, 'report', 'runs.journal');
    while (!existsSync(journal) || statSync(journal).size < 20_000) await setTimeout(20);
    child.kill('SIGINT');
    const { code, out, err } = await end;
    expect({ code, out }).toEqual({ code: 130, out: '' });
    const [, finished] = /^mendline: interrupted: (\d+) of 20000 runs had finished; they are kept in /.exec(
      err,
    )!;
    expect(Number(finished)).toBeGreaterThan(0);
    const rows = readFileSync(kept, 'utf8').trim().split('\r\n').slice(1);
    expect(rows).toHaveLength(Number(finished));
    expect(err).toMatch(
      /what had finished is kept in \S+runs\.journal; the same command with --resume goes on/,
    );
    const left = ['runs.journal', 'unfinished-runs.csv'].map((name) => join('report', name));
    expect(at.files()).toEqual(['cell.yaml', 'report', ...left]);

    const later = await at.mendline(['compare', path, '--out', 'report']);
    expect(later.code).toBe(0);
    expect(later.err).toMatch(
      /runs of an experiment that was not finished .*; it is now \S+runs\.journal\.1\./,
    );
    expect(existsSync(kept)).toBe(false);
    expect(at.files()).toContain(join('report', 'comparison.html'));
  });
});

describe('a command that has not come to its runs', () => {
  /** Starts a command on a scenario that comes by a pipe, interrupts it as soon as that is read, and returns how it ends. */
  async function interruptedAtOnce(words: readonly string[], text: string) {
    const pipe = join(at.path, 'cell.yaml');
    execFileSync('mkfifo', [pipe]);
    const [command, ...options] = words;
    const child = at.start([command!, 'cell.yaml', ...options]);
    const end = ended(child);
    await writeFile(pipe, text);
    child.kill('SIGINT');
    return end;
  }
  // Such runs would outlast the test.
  const long = quick().replace('length: 1 h', 'length: 90000 h');

  it.each([
    ['run'],
    ['compare', '--seeds', '200'],
    ['vary', '--over', 'stations/gauging/buffer=1,2'],
    ['explain'],
  ])('%s exits 130 during its pilot, and says so', async (...words) => {
    const { code, out, err } = await interruptedAtOnce(words, long.replace('10 min', 'by-pilot'));
    expect({ code, out }).toEqual({ code: 130, out: '' });
    expect(err).toBe(
      'mendline: interrupted while warming up: 0 of 10 runs of the pilot had finished, and none else\n',
    );
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('compare does so in the pilot that its page shows', async () => {
    const { code, err } = await interruptedAtOnce(['compare'], long);
    expect(code).toBe(130);
    expect(err).toContain('interrupted while warming up: 0 of 10 runs of the pilot');
  });

  it.each(['trace', 'watch', 'explain'])('%s, whose run never pauses, exits 130', async (command) => {
    const { code, out, err } = await interruptedAtOnce([command], long);
    expect({ code, out }).toEqual({ code: 130, out: '' });
    expect(err).toBe('mendline: interrupted before any run had finished\n');
  });
});

it('counts twins when it is interrupted, as progress does', async () => {
  const path = at.file('cell.yaml', quick() + DISTURBED);
  const child = at.start(['compare', path, '--seeds', '5000', '--out', 'report']);
  const end = ended(child);
  const journal = join(at.path, 'report', 'runs.journal');
  while (!existsSync(journal) || statSync(journal).size < 20_000) await setTimeout(20);
  child.kill('SIGINT');
  const { code, err } = await end;
  expect(code).toBe(130);
  const [, done, kept] =
    /^mendline: interrupted: (\d+) of 20000 runs had finished; (\d+) of them, those that are no twins, are kept in/.exec(
      err,
    )!;
  const rows = readFileSync(join(at.path, 'report', 'unfinished-runs.csv'), 'utf8')
    .trim()
    .split('\r\n');
  expect(rows.slice(1)).toHaveLength(Number(kept));
  expect(Number(kept)).toBeLessThan(Number(done));
});
