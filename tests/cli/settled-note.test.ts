import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { clockText } from '../../src/report/trace/clock-text.ts';
import { quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
  at.file('cell.yaml', quick().replace('warm-up: 10 min', 'warm-up: by-pilot'));
  at.file('given.yaml', quick());
});
afterEach(() => at.remove());

it.each([
  ['run', ['--seeds', '2']],
  ['compare', ['--seeds', '2', '--no-twins']],
  ['vary', ['--seeds', '2', '--over', 'stations/gauging/buffer=2,3']],
])('%s tells where counting begins, where a pilot finds it', async (command, options) => {
  const { code, out } = await at.mendline([command, 'cell.yaml', ...options]);
  expect(code).toBe(0);
  expect(out.replace(/\s+/g, ' ')).toMatch(
    /Counting begins at [1-9][\d.]* (s|min), where MSER-5 finds a pilot of 10 undisturbed runs of "carry on" settled\./,
  );
  for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
});

it('counts in a trace and in a playback from where run does', async () => {
  const words = ['cell.yaml', '--policy', 'scrap at once'];
  const told = JSON.parse((await at.mendline(['trace', ...words, '--json'])).out);
  const ran = JSON.parse((await at.mendline(['run', ...words, '--seeds', '1', '--json'])).out);
  expect(told.warm_up_s).toBeGreaterThan(0);
  const counted = told.scrapped.filter((part: { at_s: number }) => part.at_s > told.warm_up_s);
  expect(counted.length).toBe(ran.runs[0].counts.scrapped);
  expect((await at.mendline(['watch', ...words, '--out', 'page.html'])).code).toBe(0);
  const page = readFileSync(join(at.path, 'page.html'), 'utf8');
  expect(page).toContain(`Until ${clockText(told.warm_up_s)}, as far as the thin rule`);
});

it('says nothing of a warm-up that the scenario gives, and nothing beside data', async () => {
  expect((await at.mendline(['run', 'given.yaml'])).out).not.toContain('Counting begins');
  const { out } = await at.mendline(['run', 'cell.yaml', '--json']);
  expect(JSON.parse(out).seeds).toEqual([1, 2, 3]);
});
