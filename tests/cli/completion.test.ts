import { execFileSync, spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { Scratch } from './command.ts';

const TAB = '\t';
const TO_THE_START = '\u0001';

/** The words that bash passes on, at work with the printed script, once TAB was pressed behind each of these lines. */
function passedOn(lines: readonly string[]): string[][] {
  const given = [
    'mendline() { node bin/mendline.js "$@"; }',
    'eval "$(mendline completion bash)"',
    ...lines.map((line) => `${line}${TAB}${TO_THE_START}printf '<%s>' `),
    '',
  ].join('\necho\n');
  const { stdout } = spawnSync('bash', ['--norc', '-i'], { input: given, encoding: 'utf8' });
  return [...stdout.matchAll(/^<mendline>(.*)>/gm)].map(([, rest]) => rest!.slice(1).split('><'));
}

const demo = 'scenarios/tray-cell.yaml';

it('completes in an interactive bash what is typed, with quotes where a name needs them', () => {
  const lines = [
    'mendline expl',
    `mendline run ${demo} --see`,
    'mendline check scenarios/tray-c',
    `mendline run ${demo} --policy ret`,
    `mendline run ${demo} --policy "ret`,
    `mendline run ${demo} --policy 'stop a`,
    `mendline run ${demo} --policy stop\\ a`,
    `mendline run ${demo} --policy=ret`,
    `mendline run ${demo} --seeds 4`,
    'mendline vary x --design lat',
  ];
  expect(passedOn(lines)).toEqual([
    ['explain'],
    ['run', demo, '--seeds'],
    ['check', demo],
    ['run', demo, '--policy', 'retune forming'],
    ['run', demo, '--policy', 'retune forming'],
    ['run', demo, '--policy', 'stop and fix'],
    ['run', demo, '--policy', 'stop and fix'],
    ['run', demo, '--policy=retune forming'],
    ['run', demo, '--seeds', '4'],
    ['vary', 'x', '--design', 'latin'],
  ]);
});

it('prints a script that the shell it is for can read, and none for another', async () => {
  const at = new Scratch();
  const bash = await at.mendline(['completion'], { SHELL: '/bin/bash' });
  execFileSync('bash', ['-n'], { input: bash.out });
  const zsh = await at.mendline(['completion'], { SHELL: '/usr/bin/zsh' });
  expect(zsh.out).toMatch(/^#compdef mendline\n/);
  expect((await at.mendline(['completion', 'zsh'], { SHELL: '/bin/bash' })).out).toBe(zsh.out);
  const { code, out, err } = await at.mendline(['completion', 'fish']);
  expect({ code, out, err }).toEqual({
    ...{ code: 2, out: '' },
    err: 'mendline: there is no completion for "fish"; name bash or zsh\n',
  });
  at.remove();
});
