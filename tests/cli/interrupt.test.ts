import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ended, quick, Scratch } from './command.ts';

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
  }, 30_000);
});
