import { afterAll, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { Scratch } from './command.ts';

const scratch = new Scratch();
afterAll(() => scratch.remove());
/** Any parser would find a problem in every row. */
const ROW = 'stations: { press: [ & * "never closed\n';
const TEN_MEGABYTES = ROW.repeat(Math.ceil(10_000_000 / ROW.length));
scratch.file('large.yaml', TEN_MEGABYTES);
scratch.file('small.yaml', 'mendline: 1\n');

it.each([['run'], ['watch'], ['classroom'], ['trace', '--part', '1'], ['check'], ['compare']])(
  '%s refuses a scenario of 10 MB by its size, unread',
  async (command, ...words) => {
    const { code, out, err } = await scratch.mendline([command!, 'large.yaml', ...words]);
    expect([code, out]).toEqual([EXIT.scenario, '']);
    expect(err).toBe(
      `large.yaml:1:1: the file has ${TEN_MEGABYTES.length} characters; a scenario has at most 300000\n` +
        `    1 | ${ROW}      | ^\nlarge.yaml: 1 problem\n`,
    );
    expect(scratch.files()).toEqual(['large.yaml', 'small.yaml']);
  },
);

it('refuses a supplement of 10 MB in the same words', async () => {
  scratch.file('small.yaml', 'mendline: 1\n');
  const { code, err } = await scratch.mendline(['watch', 'small.yaml', '--with', 'large.yaml']);
  expect(code).toBe(EXIT.scenario);
  expect(err).toContain(`the file has ${TEN_MEGABYTES.length} characters; a scenario has at most 300000`);
});
