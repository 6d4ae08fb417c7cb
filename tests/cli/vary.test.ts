import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ended, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
});
afterEach(() => at.remove());

/** Two stations of which the second is never starved and never fails: what it can do is known. */
const line = (cycle = '10 s', length = '10 h') =>
  at.file(
    'line.yaml',
    `mendline: 1
title: A line whose rate is known
about: Made up.
run: { warm-up: 1 h, length: ${length}, seeds: 4 }
stock: { blank: { unlimited: true } }
stations:
  feeder: { does: work, takes: blank, cycle: 1 s, to: press }
  press: { does: work, buffer: 5, cycle: ${cycle}, to: good }
policies:
  carry on: []
  hold on: [{ do: hold, station: press, when: { from: 2 h, to: 3 h } }]
`,
  );
const read = (name: string) => readFileSync(join(at.path, 'report', name), 'utf8');
const BUFFER = ['--over', 'stations/press/buffer=2,5,9'];
const FILES = ['vary.csv', 'vary.html', 'vary.json'];

interface Row {
  readonly of: string | readonly string[];
  readonly at?: readonly unknown[];
  readonly effect: { readonly value: number; readonly lower: number; readonly upper: number };
  readonly matters?: boolean;
}
const effectsOf = (out: string) => (JSON.parse(out) as { effects: Row[] }).effects;

describe('vary', () => {
  it('gives the effects of a line whose rate is known, the same bytes on any workers, and can be rerun', async () => {
    // A part every cycle: 3600 s over 9, 10 and 12 s are 400, 360 and 300 an hour, 353 1/3 in the mean, whatever the buffer.
    const args = ['vary', line(), '--over', 'stations/press/cycle=9 s,10 s,12 s', ...BUFFER, '--out', 'report']; // biome-ignore format: one line reads better
    const { code, out } = await at.mendline([...args, '--workers', '1']);
    expect(code).toBe(0);
    expect(out).toContain('effects on throughput, good /h: against the mean over all settings');
    expect(out).toContain('Beside it: vary.json and vary.csv');
    expect(at.files().filter((name) => name.startsWith('report/'))).toEqual(FILES.map((name) => join('report', name))); // biome-ignore format: one line reads better
    const rows = effectsOf(read('vary.json'));
    const single = rows.filter(({ of }) => of.length === 1);
    const expected = [400 - 1060 / 3, 360 - 1060 / 3, 300 - 1060 / 3, 0, 0, 0];
    for (const [i, value] of expected.entries()) expect(single[i]!.effect.value).toBeCloseTo(value, 6);
    expect(rows.slice(6).every(({ effect }) => effect.value === 0)).toBe(true);
    expect(read('vary.csv').split('\r\n')[1]).toMatch(/^1,9 s,2,carry on,1,400,/);
    expect(read('vary.csv').trim().split('\r\n')).toHaveLength(1 + 9 * 4);

    const first = FILES.map(read);
    await at.mendline([...args, '--workers', '2']);
    expect(FILES.map(read)).toEqual(first);
    const again = await at.mendline(['rerun', 'report']);
    expect(again).toMatchObject({ code: 0, err: '' });
    expect(again.out).toContain('All 3 files have the same bytes.');
  }, 120_000);

  it('finds an effect of luck with its interval', async () => {
    // A station that never waits and takes exponential times makes a Poisson number of parts: 360 an hour by 10 s, 300 by 12 s.
    const path = line('{ distribution: exponential, mean: 10 s }', '40 h');
    const args = ['vary', path, '--over', 'stations/press/cycle/mean=10 s,12 s', '--json', '--seeds', '12'];
    const { out } = await at.mendline(args);
    const [{ effect }] = effectsOf(out) as [Row];
    // The interval is 2.2 standard errors to each side (t, 11 degrees of freedom): 4 of them.
    expect(Math.abs(effect.value + 60)).toBeLessThan((4 / 2.2) * ((effect.upper - effect.lower) / 2));
    expect(effect.upper).toBeLessThan(0);
  }, 60_000);

  it('spreads settings over ranges, screens, and takes a fraction with the policy among what is varied', async () => {
    const ranges = ['--over', 'stations/press/cycle=9 s to 12 s', '--over', 'stations/press/buffer=2 to 9', '--json']; // biome-ignore format: one line reads better
    const latin = await at.mendline(['vary', line(), ...ranges, '--design', 'latin', '--points', '12']);
    const [cycle, buffer] = effectsOf(latin.out) as [Row, Row];
    // Between 9 and 12 s the rate falls from 400 to 300, nearly straight.
    expect(Math.abs(cycle.effect.value + 100)).toBeLessThan(5);
    expect(Math.abs(buffer.effect.value)).toBeLessThan(5);

    const screened = await at.mendline(['vary', line(), ...ranges, '--design', 'screen', '--paths', '3']);
    expect(effectsOf(screened.out).map(({ of, matters }) => [of, matters])).toEqual([
      ['press/cycle', true],
      ['press/buffer', false],
    ]);

    const two = ['--over', 'stations/press/cycle=9 s,12 s', '--over', 'stations/press/buffer=2,9', '--json'];
    const policies = ['--policy', 'carry on', '--policy', 'hold on'];
    const part = await at.mendline(['vary', line(), ...two, ...policies, '--design', 'fraction']);
    const document = JSON.parse(part.out);
    expect(document).toMatchObject({ design: 'fraction', resolution: 3, policy: null });
    expect(document.effects.map((row: Row) => row.of)).toEqual([
      ['press/cycle'],
      ['press/buffer'],
      ['policy'],
    ]);
    expect(document.effects[2].mixed_with).toEqual([{ of: ['press/cycle', 'press/buffer'], sign: 1 }]);
    // One hour of ten without a part.
    expect(document.effects[2].effect.value).toBeLessThan(-20);
  }, 120_000);

  it('goes on from its journal to the same bytes, and keeps what had finished', async () => {
    const args = ['vary', line('{ distribution: exponential, mean: 1 s }'), ...BUFFER, '--seeds', '40', '--out', 'report']; // biome-ignore format: one line reads better
    await at.mendline(args);
    const whole = FILES.map(read);
    rmSync(join(at.path, 'report'), { recursive: true });
    const child = at.start(args);
    const end = ended(child);
    const journal = join(at.path, 'report', 'runs.journal');
    while (!existsSync(journal) || statSync(journal).size < 10_000) await setTimeout(5);
    child.kill('SIGINT');
    const { code, err } = await end;
    expect(code).toBe(130);
    const [, finished] = /interrupted: (\d+) of 120 runs had finished; they are kept in /.exec(err)!;
    expect(read('unfinished-vary.csv').trim().split('\r\n')).toHaveLength(Number(finished) + 1);
    const resumed = await at.mendline([...args, '--resume']);
    expect(resumed.err).toMatch(/going on from .*runs\.journal: \d+ of 120 runs are there\./);
    expect(FILES.map(read)).toEqual(whole);
    expect(existsSync(journal)).toBe(false);
    expect(existsSync(join(at.path, 'report', 'unfinished-vary.csv'))).toBe(false);
  }, 120_000);
});

describe('vary refuses, with the remedy,', () => {
  it.each<[string, string[], string]>([
    ['an unknown station', ['--over', 'stations/pres/buffer=1,2'], 'there is no "pres" in "stations"; did you mean "press"?'],
    ['an unknown key', ['--over', 'stations/press/bufer=1,2'], 'unknown key "bufer"; did you mean "buffer"?'],
    ['a value that cannot stand there, and says at which setting', ['--over', 'stations/press/buffer=2,-1'], 'with stations/press/buffer = -1 this is no scenario: stations/press/buffer: expected a whole number'],
    ['values that mean the same', ['--over', 'stations/press/cycle=60 s,1 min'], '60 s and 1 min are the same to the line'],
    ['an unknown policy', [...BUFFER, '--policy', 'hold onn'], '--policy "hold onn" is not in the scenario; did you mean "hold on"?'],
    ['a policy twice', [...BUFFER, '--policy', 'hold on', '--policy', 'hold on'], 'is given twice'],
    ['an unknown measure', [...BUFFER, '--by', 'thruput'], 'did you mean "throughput"?'],
    ['an unknown design', [...BUFFER, '--design', 'latn'], '--design "latn" is no design; did you mean "latin"?'],
    ['points at which two things go together', ['--over', 'stations/press/cycle=9 s,10 s', '--over', 'stations/press/buffer=2,3', '--design', 'latin', '--points', '4'], 'at the 4 points drawn, press/buffer goes with the others'],
    ['half a point', [...BUFFER, '--points', '1.5'], '--points expects a whole number from 1'],
    ['nothing to vary', [], 'nothing is varied; name a place and its values'],
  ])('%s', async (_, args, told) => {
    const { code, out, err } = await at.mendline(['vary', line(), ...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.replace(/\s+/g, ' ')).toContain(told);
    expect(existsSync(join(at.path, 'reports'))).toBe(false);
  }, 30_000); // biome-ignore format: one line a case reads better

  it('a folder that cannot be written, before any run', async () => {
    at.file('taken', '');
    const { code, err } = await at.mendline(['vary', line(), ...BUFFER, '--out', 'taken']);
    expect(code).toBe(5);
    expect(err).toContain('choose another folder with --out FOLDER');
  }, 30_000);
});
