import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';

/** What bash offers after these words, with the printed script at work. */
function offered(...words: string[]): string[] {
  const script = `
mendline() { node bin/mendline.js "$@"; }
source <(mendline completion)
COMP_WORDS=(mendline "$@"); COMP_CWORD=$#
_mendline_yargs_completions
printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync('bash', ['-c', script, 'bash', ...words], { encoding: 'utf8' })
    .split('\n')
    .filter((word) => word !== '');
}

it('completes commands in bash', () => {
  expect(offered('comp').sort()).toEqual(['compare', 'completion']);
  expect(offered('expl')).toEqual(['explain']);
});

it('completes options in bash, and leaves files to it', () => {
  expect(offered('compare', '--see')).toEqual(['--seeds']);
  expect(offered('compare', 'scen')).toEqual([]);
});
