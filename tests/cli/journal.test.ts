import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readRecord } from '../../src/experiment/journal/record.ts';
import { DISTURBED, type Ended, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

/** How often the command is killed; `npm run kill-test` has it done 20 times. */
const KILLS = Number(process.env.MENDLINE_KILLS ?? 4);
const SEEDS = 40;

const report = (folder: string) =>
  Object.fromEntries(
    readdirSync(join(at.path, folder)).map((name) => [
      name,
      readFileSync(join(at.path, folder, name), 'utf8'),
    ]),
  );
const journal = (folder: string) => join(at.path, folder, 'runs.journal');

/** The whole records of a journal, and the runs they are of. */
function recordsIn(path: string): { readonly records: string[]; readonly runs: number[] } {
  if (!existsSync(path)) return { records: [], runs: [] };
  const lines = readFileSync(path, 'latin1').split('\n');
  const [, ...records] = lines.filter((line) => readRecord(Buffer.from(line, 'latin1')) !== null);
  return { records, runs: records.map((record) => Number(/"run":(\d+)/.exec(record)![1])) };
}

/** Waits until so many bytes are in a file, or until the command is over. */
async function grown(path: string, bytes: number, end: Promise<unknown>): Promise<void> {
  let over = false;
  end.then(() => {
    over = true;
  });
  while (!over && !(existsSync(path) && statSync(path).size >= bytes)) await setTimeout(2);
}

describe('a comparison that was killed', () => {
  it(`${KILLS} times at random moments and gone on from gives the bytes of one that was not, and runs nothing twice`, async () => {
    const path = at.file('cell.yaml', quick() + DISTURBED);
    const words = ['compare', path, '--seeds', `${SEEDS}`, '--workers', '2', '--out'];
    const whole = await at.mendline([...words, 'whole']);
    expect(whole).toMatchObject({ code: 0, err: '' });
    const names = ['comparison.html', 'comparison.json', 'runs.csv', 'twins.csv'];
    expect(Object.keys(report('whole')).sort()).toEqual(names);

    const planned = SEEDS * 4;
    const size = 2500 * planned;
    let last: Ended = whole;
    for (let kills = 0; ; ) {
      const before = recordsIn(journal('killed'));
      const child = at.start([...words, 'killed', '--resume']);
      const end = ended(child);
      if (kills < KILLS) {
        // Any moment from the start of the process on, and some while a record is written.
        const more = Math.random() < 0.3 ? 0 : (Math.random() * size) / KILLS;
        if (more === 0) await setTimeout(Math.random() * 800);
        else await grown(journal('killed'), before.records.join('').length + more, end);
        child.kill('SIGKILL');
      }
      last = await end;
      if (last.code !== null) {
        if (kills >= KILLS) break;
        // It was sooner over than killed: once more, from the start.
        expect(last).toMatchObject({ code: 0 });
        expect(report('killed')).toEqual(report('whole'));
        continue;
      }
      kills++;
      const after = recordsIn(journal('killed'));
      // What was there stays as it was, in front; no run is there twice, none that is not in the plan.
      expect(after.records.slice(0, before.records.length)).toEqual(before.records);
      expect(new Set(after.runs).size).toBe(after.runs.length);
      expect(after.runs.every((run) => run < planned)).toBe(true);
      if (before.records.length > 0 && last.err !== '')
        expect(last.err).toContain(`${before.records.length} of ${planned} runs are there, twins among them`);
    }
    expect(last).toMatchObject({ code: 0 });
    expect(last.out.replace(join('killed', 'comparison'), join('whole', 'comparison'))).toBe(whole.out);
    // The journal and its lock are gone, too.
    expect(report('killed')).toEqual(report('whole'));
  }, 180_000);

  it('or interrupted, goes on with a torn last record, on another number of workers, to the same JSON', async () => {
    const path = at.file('cell.yaml', quick());
    const words = ['compare', path, '--seeds', '60', '--json', '--out', 'a'];
    const whole = await at.mendline(words);
    const child = at.start(words);
    const end = ended(child);
    await grown(journal('a'), 20_000, end);
    child.kill('SIGKILL');
    expect((await end).code).toBeNull();
    const bytes = readFileSync(journal('a'));
    writeFileSync(journal('a'), bytes.subarray(0, bytes.length - 5));
    const { code, out, err } = await at.mendline([...words, '--resume', '--workers', '1']);
    expect({ code, out }).toEqual({ code: 0, out: whole.out });
    expect(err).toMatch(
      /^mendline: going on from \S+: \d+ of 120 runs are there; 1 broken record is left out\.$/m,
    );
  }, 60_000);
});

describe('a journal that cannot be gone on from', () => {
  /** Leaves a journal of a few runs behind. */
  async function leave(path: string): Promise<Buffer> {
    const child = at.start(['compare', path, '--seeds', '5000', '--out', 'a']);
    const end = ended(child);
    await grown(journal('a'), 10_000, end);
    child.kill('SIGKILL');
    await end;
    return readFileSync(journal('a'));
  }

  it('is refused with the reason and what to do, exits 2, and stays as it is', async () => {
    const path = at.file('cell.yaml', quick());
    const left = await leave(path);
    const fewer = await at.mendline(['compare', path, '--seeds', '3', '--out', 'a', '--resume']);
    expect({ code: fewer.code, out: fewer.out }).toEqual({ code: 2, out: '' });
    expect(fewer.err).toBe(
      `mendline: ${join('a', 'runs.journal')} cannot be gone on from: it is of 10000 runs (2 policies under 5000 seeds), and 6 runs (2 policies under 3 seeds) are asked for; give the command that it was begun with, leave out --resume to put it aside and begin anew, or name another folder with --out\n`,
    );
    at.file('cell.yaml', `${quick()}# altered\n`);
    const altered = await at.mendline(['compare', path, '--seeds', '5000', '--out', 'a', '--resume']);
    expect(altered.code).toBe(2);
    expect(altered.err).toContain('it is of another scenario, or the scenario was altered since');
    expect(readFileSync(journal('a'))).toEqual(left);
  }, 60_000);

  it('because another process writes it is left alone, exits 5', async () => {
    const path = at.file('cell.yaml', quick());
    const words = ['compare', path, '--seeds', '5000', '--out', 'a'];
    const child = at.start(words);
    const end = ended(child);
    await grown(journal('a'), 10_000, end);
    for (const resume of [[], ['--resume']]) {
      const { code, out, err } = await at.mendline([...words, ...resume]);
      expect({ code, out }).toEqual({ code: 5, out: '' });
      expect(err).toMatch(
        new RegExp(`process ${child.pid} has been writing runs here since .*; wait for its end`),
      );
    }
    child.kill('SIGINT');
    expect((await end).code).toBe(130);
    const { runs } = recordsIn(journal('a'));
    expect(new Set(runs).size).toBe(runs.length);
  }, 60_000);

  it('because no folder is named', async () => {
    const { code, err } = await at.mendline(['compare', at.file('c.yaml', quick()), '--json', '--resume']);
    expect(code).toBe(2);
    expect(err).toContain('--resume goes on in the folder of a report; name it with --out');
  });
});
