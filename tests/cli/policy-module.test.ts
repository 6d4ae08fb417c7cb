import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { quick, Scratch } from './command.ts';

let at: Scratch;
let cell: string;
beforeAll(() => {
  at = new Scratch();
  cell = at.file('cell.yaml', quick());
});
afterAll(() => at.remove());

const policy = (name: string, start: string) =>
  at.file(`${name}.ts`, `export default { name: '${name}', start(cell: any): void { ${start} } };\n`);

describe.concurrent('a policy module on the command line', () => {
  it('is compared with the others, the same on one worker as on two, and named with its hash', async () => {
    // What a module keeps by itself would tell how many runs a worker had done.
    const path = at.file(
      'scrap.ts',
      `let runs = 0;
export default { name: 'scrap in code', start(cell: any): void {
  if (++runs === 1) cell.switching({ do: 'inspect', at: 'gauging', every: 1, 'off-limits': 'scrap' })(true);
} };`,
    );
    const asked = ['compare', cell, '--policy-module', path, '--json', '--workers'];
    const [one, two] = await Promise.all([at.mendline([...asked, '1']), at.mendline([...asked, '2'])]);
    expect(one).toMatchObject({ code: 0, err: '' });
    expect(two).toEqual(one);
    const found = JSON.parse(one.out);
    expect(found.policies).toEqual(['carry on', 'scrap at once', 'scrap in code']);
    expect(found.policy_modules).toEqual([
      { policy: 'scrap in code', file: path, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) },
    ]);
    const runsOf = (name: string) => found.runs.filter((run: { policy: string }) => run.policy === name);
    const same = runsOf('scrap at once').map((run: object) => ({ ...run, policy: 'scrap in code' }));
    expect(runsOf('scrap in code')).toEqual(same);
  });

  it('goes to a report of its own, which names it', async () => {
    const path = policy('idle', '');
    expect((await at.mendline(['compare', cell, '--policy-module', path])).code).toBe(0);
    const page = readFileSync(join(at.path, 'reports', 'cell-with-idle', 'comparison.html'), 'utf8');
    expect(page).toContain('<dt>policy module</dt>');
    expect(page).toContain(`--policy-module ${path}</code>`);
  });

  it('may be one of several, and is what is run where no policy is named', async () => {
    const [first, second] = [policy('first', ''), policy('second', '')];
    const asked = [
      'run',
      cell,
      '--policy-module',
      first,
      '--policy-module',
      second,
      '--seeds',
      '1',
      '--json',
    ];
    const ran = async (...more: string[]) =>
      JSON.parse((await at.mendline([...asked, ...more])).out).policies;
    expect(await ran()).toEqual(['first']);
    expect(await ran('--policy', 'second')).toEqual(['second']);
    expect(await ran('--policy', 'carry on')).toEqual(['carry on']);
  });
});

describe.concurrent('a policy module that goes wrong in a run', () => {
  it.each([
    ['throws', "cell.after(600, () => { throw new Error('no more') })", 'at 600 s its module', 'no more'],
    [
      'looping',
      'cell.after(600, () => { for (;;) {} })',
      'at 600 s its module',
      'did not come back within 1 s',
    ],
    ['nowhere', "cell.after(600, () => cell.hold('gaugng'))", 'at 600 s', 'did you mean "gauging"?'],
    ['truth', 'cell.after(600, () => cell.parts)', 'at 600 s', 'true values are out of its reach'],
    ['promising', '(async () => { throw new Error("late") })()', 'at 4200 s', 'left a promise that failed'],
  ])(
    'exits 4, names itself, the time and the seed, and lets finished runs be kept: %s',
    async (name, start, ...said) => {
      const path = policy(name, start);
      const asked = ['compare', cell, '--policy-module', path, '--module-timeout', '1', '--workers', '1'];
      const { code, out, err } = await at.mendline([...asked, '--out', name]);
      expect({ code, out }).toEqual({ code: 4, out: '' });
      expect(err).toContain(`mendline: the run of policy "${name}" under seed 1 failed: at `);
      for (const words of said) expect(err).toContain(words);
      const kept = readFileSync(join(at.path, name, 'unfinished-runs.csv'), 'utf8');
      expect(kept).toContain('carry on');
      expect(kept).toContain('scrap at once');
    },
  );

  it('is refused before any run where it is none, which exits 3', async () => {
    const path = at.file('none.ts', 'export default 5;');
    expect(await at.mendline(['run', cell, '--policy-module', path])).toEqual({
      code: 3,
      out: '',
      err: `mendline: ${path}: its default export is a number; expected export default { name: "...", start(cell) { ... } }\n`,
    });
  });

  it('needs a time that can be', async () => {
    const { code, err } = await at.mendline(['run', cell, '--module-timeout', '0.5']);
    expect(code).toBe(2);
    expect(err).toContain('--module-timeout expects a whole number from 1 to 3600');
  });
});
