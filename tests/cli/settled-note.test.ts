import { afterEach, beforeEach, expect, it } from 'vitest';
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

it('says nothing of a warm-up that the scenario gives, and nothing beside data', async () => {
  expect((await at.mendline(['run', 'given.yaml'])).out).not.toContain('Counting begins');
  const { out } = await at.mendline(['run', 'cell.yaml', '--json']);
  expect(JSON.parse(out).seeds).toEqual([1, 2, 3]);
});
