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

const SIZES =
  'second: { at: stations/second/buffer, least: 0, most: 10, cost: 5 }\n      third: { at: stations/third/buffer, least: 0, most: 20, step: 2, cost: 3 }';
const MEETS = '{ measure: throughput, at-least: 40 /h, worth: 6 /h }';

const sizing = (sizes = SIZES, meets = MEETS, more = '') =>
  `sizings:\n  enough:${more}\n    sizes:\n      ${sizes}\n    meets: [${meets}]\n`;

/** Three stations with places between them. */
const LINE = `mendline: 1
title: Three stations
about: Invented, to be run in no time.
run: { warm-up: 1 h, length: 10 h, seeds: 3 }
stock: { blank: { unlimited: true } }
stations:
  first: { does: work, takes: blank, cycle: { distribution: exponential, mean: 1 min }, to: second }
  second: { does: work, buffer: 1, cycle: { distribution: exponential, mean: 1 min }, to: third }
  third: { does: work, buffer: 1, cycle: { distribution: exponential, mean: 1 min }, to: good }
policies: { carry on: [] }
`;

const cell = (own = sizing()) => at.file('cell.yaml', LINE + own);
const NAMES = ['sizing.csv', 'sizing.html', 'sizing.json'];
const report = (folder: string) => NAMES.map((name) => readFileSync(join(at.path, folder, name), 'utf8'));

describe('size', () => {
  it('prints the choice and writes page, JSON and CSV, the same bytes on any workers', async () => {
    const path = cell();
    const one = await at.mendline(['size', path, '--seeds', '4', '--workers', '1', '--out', 'one']);
    expect(one).toMatchObject({ code: 0, err: '' });
    expect(one.out).toContain('Enough at least cost: second ');
    expect(one.out).toContain('of 121 possible choices of sizes were simulated');
    const two = await at.mendline(['size', path, '--seeds', '4', '--workers', '2', '--out', 'two']);
    expect(two.out).toBe(one.out.replaceAll('one/', 'two/'));
    expect(report('two')).toEqual(report('one'));
    expect(at.files().filter((name) => name.startsWith('one/'))).toEqual(NAMES.map((name) => `one/${name}`));
    const document = JSON.parse(readFileSync(join(at.path, 'one', 'sizing.json'), 'utf8'));
    expect(document.command).toEqual(['size', path, '--seeds', '4', '--within', 'none']);
    // What it records, done again, gives the same.
    const again = await at.mendline([...document.command, '--out', 'again']);
    expect(again.code).toBe(0);
    expect(report('again')).toEqual(report('one'));
  });

  it('ends after as many runs as it may, and says so', async () => {
    const cut = await at.mendline(['size', cell(), '--at-most', '150', '--json']);
    expect(cut).toMatchObject({ code: 0, err: '' });
    const document = JSON.parse(cut.out);
    expect(document).toMatchObject({ runs: 150, ended_early: true, chosen: null });
    expect(document.verdict.at(-1)).toContain('It ended after 150 runs');
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('ends when time is up, and what it records gives the same bytes', async () => {
    const out = await at.mendline(['size', cell(), '--within', '400 ms', '--out', 'timed']);
    expect(out).toMatchObject({ code: 0, err: '' });
    const document = JSON.parse(readFileSync(join(at.path, 'timed', 'sizing.json'), 'utf8'));
    if (document.ended_early) expect(document.command).toContain('--at-most');
    const again = await at.mendline([...document.command, '--out', 'again']);
    expect(again).toMatchObject({ code: 0, err: '' });
    expect(report('again')).toEqual(report('timed'));
  });

  it.each([
    ['before the first runs were done', []],
    ['while all choices were to be simulated', ['--whole']],
  ])('whose time was over %s is made again the same', async (_when, more) => {
    // Eleven choices, which are few enough to be simulated all without being asked for.
    const path = cell(sizing('second: { at: stations/second/buffer, least: 0, most: 10, cost: 5 }'));
    const words = ['size', path, '--seeds', '100', ...more, '--within', '1 ms', '--out', 'timed'];
    expect(await at.mendline(words)).toMatchObject({ code: 0, err: '' });
    const document = JSON.parse(readFileSync(join(at.path, 'timed', 'sizing.json'), 'utf8'));
    expect(document).toMatchObject({ whole: true, ended_early: true });
    expect(document.runs).toBeGreaterThan(0);
    expect(document.command).toContain('--whole');
    const again = await at.mendline([...document.command, '--out', 'again']);
    expect(again).toMatchObject({ code: 0, err: '' });
    expect(report('again')).toEqual(report('timed'));
  });

  it('killed half way goes on with --resume and gives the bytes of one that was not', async () => {
    const path = cell();
    const words = ['size', path, '--seeds', '4', '--workers', '1', '--out'];
    expect(await at.mendline([...words, 'whole'])).toMatchObject({ code: 0, err: '' });
    const child = at.start([...words, 'cut']);
    const end = ended(child);
    const journal = join(at.path, 'cut', 'runs.journal');
    while (!(existsSync(journal) && statSync(journal).size > 100_000) && child.exitCode === null)
      await setTimeout(2);
    child.kill('SIGKILL');
    await end;
    expect(existsSync(journal)).toBe(true);
    const resumed = await at.mendline([...words, 'cut', '--resume']);
    expect(resumed.code).toBe(0);
    expect(resumed.err).toContain('runs.journal');
    expect(report('cut')).toEqual(report('whole'));
    expect(existsSync(journal)).toBe(false);
  });

  it('looks at ten million choices by a search, and refuses to simulate them all', async () => {
    const many = Array.from({ length: 7 }, (_, i) => `s${i}: { at: stations/${i % 2 ? 'second' : 'third'}/buffer, least: 1, most: 10, cost: 1 }`); // biome-ignore format: one line reads better
    const path = cell(sizing(many.join('\n      ')));
    const whole = await at.mendline(['size', path, '--whole']);
    expect(whole.code).toBe(2);
    expect(whole.err).toContain('--whole would simulate 10000000 choices of sizes; it takes at most 10000');
    const searched = await at.mendline(['size', path, '--choices', '20', '--at-most', '400', '--json']);
    expect(JSON.parse(searched.out)).toMatchObject({ possible: 1e7, whole: false });
  });

  it.each([
    ['no sizing', '', [], 2, 'the scenario asks for no sizing'],
    [
      'a place that is not there',
      sizing('x: { at: stations/secnd/buffer, least: 1, most: 2, cost: 1 }'),
      [],
      2,
      'there is no "secnd" in "stations"; did you mean "second"?',
    ],
    [
      'a key that is not there',
      sizing('x: { at: stations/second/bufer, least: 1, most: 2, cost: 1 }'),
      [],
      2,
      'did you mean "buffer"?',
    ],
    [
      'a size that cannot be',
      sizing('x: { at: stations/second/machines, least: 0, most: 2, cost: 1 }'),
      [],
      2,
      'stations/second/machines = 0',
    ],
    [
      'a policy that is not there',
      sizing(SIZES, MEETS, '\n    policy: cary on'),
      [],
      3,
      'sizing "enough": policy "cary on" is not in the scenario; did you mean "carry on"?',
    ],
    [
      'a measure that is none',
      sizing(SIZES, '{ measure: thruput, at-least: 5 /h }'),
      [],
      3,
      'did you mean "throughput"?',
    ],
    ['another sizing', sizing(), ['--sizing', 'enugh'], 2, 'did you mean "enough"?'],
    ['one seed', sizing(), ['--seeds', '1'], 2, 'a sizing takes 2 or more'],
    ['no time', sizing(), ['--within', '5'], 2, 'is no time; it expects one above 0'],
    [
      'more than is allowed',
      sizing(),
      ['--whole', '--at-most', '50'],
      2,
      'more than the 50 runs that --at-most allows',
    ],
    ['an option written wrongly', sizing(), ['--hole'], 2, 'did you mean "--whole"?'],
  ])('refuses %s in a sentence, before any run', async (_what, own, options, code, message) => {
    const refused = await at.mendline(['size', cell(own), ...options]);
    expect(refused.code).toBe(code);
    expect(refused.err).toContain(message);
    expect(refused.out).toBe('');
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('names the sizes of a run that failed', async () => {
    // A gauge and a bench that feed each other stand still where neither has room.
    const room = 'room: { at: [stations/gauging/buffer, stations/bench/buffer], least: 1, most: 3, cost: 1 }';
    const path = at.file('knotted.yaml', quick({ bench: '1' }) + sizing(room));
    const failed = await at.mendline(['size', path]);
    expect(failed.code).toBe(4);
    expect(failed.err).toContain('with stations/gauging/buffer = 1, stations/bench/buffer = 1');
  });
});
