import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { brokenRules } from '../report/trace/ocel-rules.ts';
import { DISTURBED, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
  at.file('cell.yaml', quick() + DISTURBED);
});
afterEach(() => at.remove());

const ESCAPE = '\u001b';
const trace = (...words: string[]) => at.mendline(['trace', 'cell.yaml', ...words]);
const content = (name: string) => readFileSync(join(at.path, name));

describe('mendline trace', () => {
  it('tells of one part, in lines of at most 80 columns without colour, and writes nothing', async () => {
    const { code, out, err } = await trace('--seed', '2', '--part', '5', '--true-values');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^A quick cell\nPart 5 of \d+, policy "carry on", seed 2\n/);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    expect(out).not.toContain(ESCAPE);
    expect(at.files()).toEqual(['cell.yaml']);
  });

  it('tells of the same parts as run counts, under the same seed', async () => {
    const words = ['--policy', 'scrap at once'];
    const told = JSON.parse((await trace(...words, '--json')).out);
    const ran = JSON.parse((await at.mendline(['run', 'cell.yaml', ...words, '--seeds', '1', '--json'])).out);
    const scrapped = told.scrapped.filter((one: { at_s: number }) => one.at_s > told.warm_up_s);
    expect(scrapped.length).toBeGreaterThan(0);
    expect(scrapped.length).toBe(ran.runs[0].counts.scrapped);
    expect(told.command).toEqual(['trace', 'cell.yaml', ...words, '--seed', '1', '--json']);
  });

  it('refuses a part that does not exist, and tells which do', async () => {
    const { code, out, err } = await trace('--part', '100000');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/--part 100000 does not exist; under seed 1 .* parts 1 to \d+ are started/);
  });

  it.each([
    [['--part', '0'], '--part expects a whole number from 1 to'],
    [['--part', 'first'], '--part expects a whole number from 1 to'],
    [['--seed', '1.5'], '--seed expects a whole number from 1 to'],
    [['--policy', 'scrap at onze'], 'did you mean "scrap at once"?'],
    [['--true-value'], 'did you mean "--true-values"?'],
    [['--out', ''], '--out expects a name after it'],
  ])('refuses %j', async (words, said) => {
    const { code, out, err } = await trace(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
  });

  it('writes the event log where it is asked to, the same bytes each time', async () => {
    const { code, out, err } = await trace('--out', 'log');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const names = ['events.csv', 'events.parquet', 'events.ocel.json'];
    expect(out).toContain('Event log: log with events.csv, events.parquet, events.ocel.json and');
    expect(at.files()).toEqual([
      'cell.yaml',
      'log',
      ...[...names, 'origin.json'].sort().map((name) => join('log', name)),
    ]);
    const origin = JSON.parse(content('log/origin.json').toString());
    const sha256 = (bytes: Buffer | string) => createHash('sha256').update(bytes).digest('hex');
    expect(origin.files).toEqual(names.map((file) => ({ file, sha256: sha256(content(`log/${file}`)) })));
    expect(origin.scenario.sha256).toBe(sha256(content('cell.yaml')));
    expect(brokenRules(JSON.parse(content('log/events.ocel.json').toString()))).toEqual([]);
    await trace('--out', 'again', '--json');
    for (const name of names)
      expect(content(`again/${name}`).equals(content(`log/${name}`)), name).toBe(true);
  });

  it('refuses a run that is far too long soon, and leaves no folder', async () => {
    at.file('long.yaml', quick().replace('length: 1 h', 'length: 20000 h'));
    const { code, out, err } = await at.mendline(['trace', 'long.yaml', '--out', 'log']);
    expect({ code, out }).toEqual({ code: 4, out: '' });
    expect(err.replace(/\s+/g, ' ')).toMatch(
      /at most 2000000 events of parts, .* would come to about \d+; give/,
    );
    expect(at.files()).toEqual(['cell.yaml', 'long.yaml']);
  });

  it('exits 5 where the folder cannot be written', async () => {
    const { code, out, err } = await trace('--out', 'cell.yaml');
    expect({ code, out }).toEqual({ code: 5, out: '' });
    expect(err).toContain('choose another folder with --out FOLDER');
  });
});
