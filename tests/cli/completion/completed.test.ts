import { expect, it } from 'vitest';
import { COMMANDS } from '../../../src/cli/commands.ts';
import { completed } from '../../../src/cli/completion/completed.ts';
import { shipped } from '../command.ts';

const demo = shipped('tray-cell.yaml');
const policies = ['stop and fix', 'stop on a chart'];

it.each<[string[], readonly string[] | 'files']>([
  [['comp'], ['compare', 'completion']],
  [
    ['completion', ''],
    ['bash', 'zsh'],
  ],
  [['fly', ''], []],
  [['compare', 'scen'], 'files'],
  [['compare', '--see'], ['--seeds']],
  [['compare', demo, '--seeds', ''], []],
  [['compare', demo, '--seeds=', ''], expect.arrayContaining(['--workers'])],
  [['compare', demo, '--worth', ''], []],
  [['compare', demo, '--with', ''], 'files'],
  [['compare', demo, '--with=x'], 'files'],
  [['compare', demo, '--only', 'stop'], policies],
  [['compare', '--only', 'carry on', demo, '--only', 'stop'], policies],
  [['run', demo, '--policy=stop'], policies.map((name) => `--policy=${name}`)],
  [['compare', demo, '--also', 'm'], ['markdown']],
  [
    ['compare', demo, '--also', 'latex,'],
    ['latex,parquet', 'latex,markdown', 'latex,svg'],
  ],
  [
    ['compare', demo, '--procedure', ''],
    ['sequential', 'two-stage'],
  ],
  [
    ['vary', demo, '--design', ''],
    ['all', 'fraction', 'latin', 'screen'],
  ],
  [['cross', demo, '--by', 'throu'], ['throughput']],
  [['size', shipped('lid-line.yaml'), '--sizing', ''], expect.arrayContaining([expect.any(String)])],
])('%j', async (words, expected) => {
  expect(await completed(words)).toEqual(expected);
});

it('offers an option that is given once no second time', async () => {
  const offered = (await completed(['run', demo, '--seeds', '3', '--with', 'x', '--'])) as string[];
  expect(offered).not.toContain('--seeds');
  expect(offered).toEqual(expect.arrayContaining(['--with', '--policy', '--help']));
});

it('takes policies from what is joined, too', async () => {
  const joined = shipped('policies/stop-on-misfits.yaml');
  expect(await completed(['run', demo, '--with', joined, '--policy', 'stop on mis'])).toEqual([
    'stop on misfits',
  ]);
});

it.each([
  ['no file', []],
  ['a file that is not there', ['nowhere.yaml']],
  ['a folder', ['scenarios']],
  ['a file that is no scenario', ['package.json', 'README.md']],
])('knows no policy of %s, and says nothing', async (_, files) => {
  expect(await completed(['run', ...files, '--policy', ''])).toEqual([]);
});

it('completes each command by its name', async () => {
  for (const { name } of COMMANDS) expect(await completed([name])).toContain(name);
});
