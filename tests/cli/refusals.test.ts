import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { quick, Scratch, shipped } from './command.ts';

let at: Scratch;
let good: string;
// Nothing here may write, so all can share one folder, at the same time.
beforeAll(() => {
  at = new Scratch();
  good = at.file('good.yaml', quick());
});
afterAll(() => at.remove());

/** Runs the command and expects this exit code, words on stderr alone, no trace of calls, and no file made. */
async function refused(args: readonly string[], code: number): Promise<string> {
  const before = at.files();
  const result = await at.mendline(args);
  expect(result.err).not.toMatch(/^\s+at /m);
  expect(result.err).not.toContain('fault of its own');
  expect({ code: result.code, out: result.out }).toEqual({ code, out: '' });
  expect(at.files()).toEqual(before);
  return result.err;
}

describe.concurrent('a wrong command line exits 2 and names the remedy', () => {
  it.each<[string, (good: string) => string[], string]>([
    [
      'no command',
      () => [],
      'say what to do: compare, cross, vary, size, run, check, explain, trace, watch, classroom or rerun',
    ],
    ['a misspelt command', () => ['comprae', 'x.yaml'], 'did you mean "compare"?'],
    [
      'an unknown command',
      () => ['fly'],
      'known here: compare, cross, vary, size, run, check, explain, trace, watch, classroom, rerun, completion',
    ],
    ['no scenario', () => ['compare'], 'name a scenario, such as scenarios/tray-cell.yaml'],
    ['two scenarios', (good) => ['check', good, 'other'], '"other" is one word too many'],
    ['a misspelt option', (good) => ['compare', good, '--sedes', '3'], 'did you mean "--seeds"?'],
    ['an option of another command', (good) => ['check', good, '--seeds', '3'], '--seeds is no option here'],
    [
      '--seeds 0',
      (good) => ['compare', good, '--seeds', '0'],
      '--seeds expects a whole number from 1 to 10000',
    ],
    ['--seeds 1.5', (good) => ['compare', good, '--seeds', '1.5'], '--seeds expects a whole number'],
    ['--seeds -3', (good) => ['compare', good, '--seeds', '-3'], '--seeds expects a whole number'],
    ['--seeds abc', (good) => ['run', good, '--seeds', 'abc'], '--seeds expects a whole number'],
    ['--seeds 1e9', (good) => ['run', good, '--seeds', '1e9'], '--seeds expects a whole number'],
    ['--seeds alone', (good) => ['compare', good, '--seeds'], '--seeds expects a value after it'],
    [
      'a --worth below zero',
      (good) => ['compare', good, '--worth', '-1 /h'],
      '--worth expects a value after it that is not below zero, and "-1 /h" is',
    ],
    [
      'two --seeds',
      (good) => ['compare', good, '--seeds', '1', '--seeds', '2'],
      '--seeds is given more than once',
    ],
    [
      '--workers 0',
      (good) => ['compare', good, '--workers', '0'],
      '--workers expects a whole number from 1 to 256',
    ],
    ['--no-json', (good) => ['compare', good, '--no-json'], '--no-json is no option here'],
    ['--no-twins of run', (good) => ['run', good, '--no-twins'], '--no-twins is no option here'],
    [
      'a misspelt option with a hyphen, which is named once',
      (good) => ['compare', good, '--no-twin'],
      '--no-twin is no option here; did you mean "--no-twins"? "mendline compare --help" shows',
    ],
    [
      '--worth without a unit',
      (good) => ['compare', good, '--worth', '0.5'],
      '--worth "0.5" has no unit; it expects an amount with its unit, such as "0.5 /h"',
    ],
    [
      '--worth of a misspelt measure',
      (good) => ['compare', good, '--worth', 'scrap rat=1 %'],
      '--worth "scrap rat" is no measure; did you mean "scrap rate"?',
    ],
    ['--worth of cross', (good) => ['cross', good, '--worth', '1 /h'], '--worth is no option here'],
    ['--worth of run', (good) => ['run', good, '--worth', '1 /h'], '--worth is no option here'],
    ['--pairs of run', (good) => ['run', good, '--pairs'], '--pairs is no option here'],
    ['two --out', (good) => ['compare', good, '--out', 'a', '--out', 'b'], '--out is given more than once'],
    ['an empty --out', (good) => ['compare', good, '--out', ''], '--out expects a name after it'],
    ['a misspelt policy', (good) => ['run', good, '--policy', 'cary on'], 'did you mean "carry on"?'],
    [
      'an unknown policy',
      (good) => ['run', good, '--policy', 'zzzzzzzzzzzz'],
      'known here: carry on, scrap at once',
    ],
    [
      'a policy without quotes',
      (good) => ['run', good, '--policy', 'carry', 'on'],
      'a name with spaces needs quotes',
    ],
  ])('%s', async (_, args, message) => {
    expect(await refused(args(good), 2)).toContain(message);
  });
});

describe('a scenario that cannot be used exits 3 and leaves nothing behind', () => {
  it.each(['compare', 'run', 'check', 'explain'])('%s of a file that is not there', async (command) => {
    expect(await refused([command, 'nowhere.yaml'], 3)).toContain('nowhere.yaml: there is no such file');
  });

  it.each(['compare', 'run', 'check', 'trace'])('%s of an exercise says so, and no more', async (command) => {
    const exercise = shipped('exercises/buffer.yaml');
    const err = await refused([command, exercise], 3);
    expect(err).toContain('this is an exercise, which "mendline classroom" takes');
    expect(err).toContain('1 problem\n');
  });

  it('an exercise to be joined', async () => {
    const err = await refused(['check', good, '--with', shipped('exercises/buffer.yaml')], 3);
    expect(err).toContain('this is an exercise, which "mendline classroom" takes');
  });

  it('a folder', async () => {
    expect(await refused(['compare', at.path], 3)).toContain('this is a folder');
  });

  it('an empty file', async () => {
    expect(await refused(['compare', at.file('empty.yaml', '')], 3)).toContain(
      'empty.yaml:1:1: the file is empty',
    );
  });

  it('problems, each shown at its place with the line and a mark', async () => {
    const path = at.file(
      'bad.yaml',
      quick().replace('cycle: 9 s', 'cycle: 9').replace('to: good', 'to: god'),
    );
    const err = await refused(['compare', path], 3);
    expect(err).toMatch(/^.*bad\.yaml:12:74: 9 has no unit; .* such as 42 s\n {3}12 \| .*\n {6}\| +\^$/m);
    expect(err).toContain('"god" is no station (or "good"); did you mean "good"?');
    expect(err).toMatch(/bad\.yaml: 2 problems\n$/);
  });
});

describe('an output folder that cannot be written exits 5 before any run', () => {
  it.each([
    ['a file where the folder should be', 'good.yaml', 'a file stands where a folder should be'],
    ['a path below a file', 'good.yaml/report', 'a file stands where a folder should be'],
  ])('%s', async (_, out, why) => {
    // So many runs would outlast the test.
    const err = await refused(['compare', shipped('tray-cell.yaml'), '--seeds', '5000', '--out', out], 5);
    expect(err).toContain(why);
    expect(err).toContain('choose another folder with --out FOLDER');
  });
});

describe('a run that fails exits 4', () => {
  it.each(['1', '2'])(
    'naming the policy, the seed and the stations that wait, on %s workers',
    async (workers) => {
      const own = new Scratch();
      const knot = own.file('knot.yaml', quick({ bench: '1', policy: 'tie a knot' }));
      const { code, out, err } = await own.mendline([
        'compare',
        knot,
        '--out',
        'report',
        '--workers',
        workers,
      ]);
      expect({ code, out }).toEqual({ code: 4, out: '' });
      expect(err).not.toMatch(/^\s+at /m);
      expect(err).toContain(
        'the run of policy "tie a knot" under seed 1 failed: the line came to a standstill',
      );
      expect(err).toContain('"gauging" waits for room in front of "bench"');
      expect(err).toContain('"bench" waits for room in front of "gauging"');
      // Runs that finished before may be kept; nothing half-written and no report is.
      const left = own.files().filter((name) => !/(unfinished-runs\.csv|runs\.journal)$/.test(name));
      expect(left).toEqual(['knot.yaml', 'report']);
      own.remove();
    },
  );

  // Each in one line, with the time and whom to look at, and nothing where the answer would stand.
  it.each([
    ['run', shipped('knotted.yaml'), []],
    ['run', shipped('knotted.yaml'), ['--json']],
    ['compare', shipped('knotted.yaml'), ['--json', '--seeds', '3']],
    ['explain', shipped('knotted.yaml'), []],
  ])('%s of a knotted line', async (command, file, more) => {
    expect(await refused([command, file, ...more], 4)).toMatch(
      /^mendline: the (run of policy "carry on"|undisturbed run) under seed 1 failed: the line came to a standstill at .+ s: "(bench|gauging)" waits for room in front of "(gauging|bench)", .+\n$/,
    );
  });

  it.each([[[]], [['--json']]])('an endless loop at one instant, with %j', async (more) => {
    const loop = at.file(
      'loop.yaml',
      `mendline: 1
title: A line that takes no time
about: Invented, to go round for ever.
run: { warm-up: 0 s, length: 1 h, seeds: 2 }
stock: { blank: { unlimited: true } }
stations:
  press: { does: work, takes: blank, cycle: 0 s, to: good }
policies: { carry on: [] }
`,
    );
    expect(await refused(['run', loop, ...more], 4)).toMatch(
      /^mendline: the run of policy "carry on" under seed 1 failed: more than \d+ events happened at 0 s .*"press".*\n$/,
    );
  });
});
