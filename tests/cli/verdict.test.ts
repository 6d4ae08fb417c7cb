import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { quick, Scratch } from './command.ts';

let at: Scratch;
beforeAll(() => {
  at = new Scratch();
  at.file('cell.yaml', `${quick()}  scrap later: []\n`);
});
afterAll(() => at.remove());

const compare = (...args: string[]) => at.mendline(['compare', 'cell.yaml', '--no-twins', ...args]);
const read = (path: string) => readFileSync(join(at.path, path), 'utf8');

it('a difference that is not worth having is said to be none, and the same runs decide otherwise without --worth', async () => {
  const { code, out, err } = await compare('--worth', '1000 /h', '--out', 'a');
  expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
  expect(out.replace(/\s+/g, ' ')).toContain('no difference worth having in throughput (');
  expect(out).toContain('Worth having: more than 1000 good /h.');
  const data = JSON.parse(read('a/comparison.json'));
  expect(data.command).toEqual(['compare', 'cell.yaml', '--no-twins', '--worth', '1000 /h']);
  expect(data.measures[0].worth).toBe(1000);
  const { measures } = JSON.parse((await compare('--json')).out);
  expect(measures[0].rows[1].verdict).not.toBe('no difference worth having');
});

it('--pairs prints every pair and leaves the files as they are', async () => {
  const plain = await compare('--out', 'b');
  const bytes = ['comparison.html', 'comparison.json'].map((name) => read(`b/${name}`));
  const pairs = await compare('--out', 'b', '--pairs');
  expect(plain.out).not.toContain('every pair:');
  expect(pairs.out).toMatch(/^scrap later +scrap at once /m);
  for (const line of pairs.out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  expect(['comparison.html', 'comparison.json'].map((name) => read(`b/${name}`))).toEqual(bytes);
});

it('one seed gives no interval and no verdict, whatever is worth having', async () => {
  const { code, out, err } = await compare('--seeds', '1', '--worth', '1 /h', '--pairs', '--out', 'c');
  expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
  expect(out.replace(/\s+/g, ' ')).toContain(
    'One run of each policy gives no interval, so nothing is claimed about their differences.',
  );
  expect(out).not.toMatch(/best in|undecided| (better|worse)$/m);
  expect(out).toContain('no claim');
});

it('what is worth having in a measure that no run gives is said to decide nothing', async () => {
  const { code, err } = await compare('--worth', '1 money', '--out', 'd');
  expect({ code, err }).toEqual({
    code: EXIT.done,
    err: 'No run gives a value for stock cost per good, so its --worth decides nothing.\n',
  });
});
