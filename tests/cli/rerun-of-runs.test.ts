import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { DISTURBED, quick, Scratch } from './command.ts';

const SUPPLEMENT = `mendline: 1
title: Scrap what is off
about: Made up.
policies:
  scrap it: [{ do: inspect, at: gauging, every: 1, off-limits: scrap }]
`;
const MODULE = `export default {
  name: 'in code',
  start(cell) {
    cell.respond({ do: 'inspect', at: 'gauging', every: 1, 'off-limits': 'scrap' });
  },
};
`;
const EXERCISE = `exercise: 1
title: A made-up exercise
teaches: Nothing.
source: Made up.
question: How much?
predict: [{ asks: How many?, of: throughput }]
scenario: cell.yaml
knobs:
  places: { at: stations/gauging/buffer, least: 1, most: 3, step: 1, starts: 1 }
watch: [throughput]
seeds: 2
discussion: None.
`;

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
  at.file('cell.yaml', quick() + DISTURBED);
  at.file('scrap.yaml', SUPPLEMENT);
  at.file('code.js', MODULE);
  at.file('exercise.yaml', EXERCISE);
});
afterEach(() => at.remove());

const ADDED = ['--with', 'scrap.yaml', '--policy-module', 'code.js', '--seed', '2'];
const done = async (...words: string[]) => {
  const ended = await at.mendline(words);
  expect(ended).toMatchObject({ code: EXIT.done, err: '' });
  return ended.out;
};
const rerun = (...words: string[]) => at.mendline(['rerun', ...words]);
const change = (name: string, from: string, to: string) => {
  const path = join(at.path, name);
  writeFileSync(path, readFileSync(path, 'latin1').replace(from, to), 'latin1');
};

describe('rerun of what one run gave', () => {
  it('makes an event log again, the folder or any file of it', async () => {
    await done('trace', 'cell.yaml', ...ADDED, '--true-values', '--out', 'log');
    const { code, out, err } = await rerun('log');
    expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
    expect(out.replace(/\s+/g, ' ')).toContain(
      'mendline trace cell.yaml --with scrap.yaml --policy-module code.js --policy "in code" --seed 2 --true-values',
    );
    const names = ['events.csv', 'events.ocel.json', 'events.parquet', 'origin.json'];
    for (const name of names) expect(out).toContain(`${name}: same bytes\n`);
    expect(out).toContain('All 4 files have the same bytes.');
    // This one says itself where it comes from, so that it may lie anywhere; a table does not.
    at.file('moved.json', readFileSync(join(at.path, 'log', 'events.ocel.json'), 'utf8'));
    expect((await rerun('moved.json')).out).toContain('moved.json: same bytes');
    at.file('moved.csv', readFileSync(join(at.path, 'log', 'events.csv'), 'utf8'));
    expect(await rerun('moved.csv')).toMatchObject({
      code: EXIT.usage,
      err: expect.stringContaining('it does not say what it was made from, and beside it there is none of'),
    });
    change(join('log', 'events.csv'), ',gauging,', ',gouging,');
    expect(await rerun(join('log', 'events.csv'))).toMatchObject({
      code: EXIT.differs,
      out: expect.stringContaining('differs from line'),
    });
  });

  it('makes what trace and run print again, of a policy as code the same run', async () => {
    const code = ['cell.yaml', '--policy-module', 'code.js'];
    at.file('trace.json', await done('trace', ...code, '--json'));
    at.file('run.json', await done('run', ...code, '--seeds', '1', '--json'));
    const read = (name: string) => JSON.parse(readFileSync(join(at.path, name), 'utf8'));
    const [told, ran] = ['trace.json', 'run.json'].map(read);
    expect(told.policy).toBe('in code');
    const scrapped = told.scrapped.filter((one: { at_s: number }) => one.at_s > told.warm_up_s);
    expect(scrapped.length).toBeGreaterThan(0);
    expect(scrapped.length).toBe(ran.runs[0].counts.scrapped);
    for (const name of ['trace.json', 'run.json']) {
      const { code, out } = await rerun(name, '--workers', '1', '--out', 'anew');
      expect([code, out]).toEqual([EXIT.done, expect.stringContaining(`${name}: same bytes`)]);
      expect(readFileSync(join(at.path, 'anew', name))).toEqual(readFileSync(join(at.path, name)));
    }
  });

  it('makes pages again, one by itself or all of a folder', async () => {
    await done('watch', 'cell.yaml', ...ADDED, '--out', join('pages', 'one.html'));
    await done('classroom', 'exercise.yaml', '--out', join('pages', 'class.html'));
    const { code, out, err } = await rerun('pages');
    expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
    for (const name of ['class', 'one']) expect(out).toContain(`${name}.html: same bytes\n`);
    expect(out).toContain('mendline classroom exercise.yaml\n');
    change(join('pages', 'one.html'), 'A quick cell', 'A quick call');
    expect(await rerun(join('pages', 'one.html'))).toMatchObject({
      code: EXIT.differs,
      out: expect.stringContaining('1 of 1 file not the same'),
    });
  });

  it('refuses where an exercise or its scenario has changed', async () => {
    await done('classroom', 'exercise.yaml', '--out', 'class.html');
    for (const [page, name, from] of [
      ['class.html', 'exercise.yaml', 'None.'],
      ['class.html', 'cell.yaml', 'Invented'],
    ] as const) {
      change(name, from, '200');
      const { code, out, err } = await rerun(page);
      expect([code, out]).toEqual([EXIT.differs, '']);
      expect(err).toContain(`${name} has changed since the report was made`);
      change(name, '200', from);
    }
  });
});
