import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { quick, Scratch } from './command.ts';

const SCRAP = `mendline: 1
title: Scrap what is off
about: Made up.
helps: Where it must.
policies:
  scrap it: [{ do: inspect, at: gauging, every: 1, off-limits: scrap }]
`;
const PASS = SCRAP.replace('scrap it', 'pass it').replace('off-limits: scrap', 'off-limits: pass');

let at: Scratch;
let line: string;
beforeEach(() => {
  at = new Scratch();
  line = at.file('cell.yaml', quick());
  at.file('scrap.yaml', SCRAP);
  at.file('pass.yaml', PASS);
});
afterEach(() => at.remove());

const BOTH = ['--with', 'scrap.yaml', '--with', 'pass.yaml'];

describe('--with', () => {
  it('joins policies to the line, says so in each file, and leaves the report of the line alone', async () => {
    const { code, out, err } = await at.mendline(['compare', ...BOTH, line]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const folder = join('reports', 'cell-with-scrap+pass');
    expect(out).toContain(join(folder, 'comparison.html'));
    const read = (name: string) => readFileSync(join(at.path, folder, name), 'utf8');
    const data = JSON.parse(read('comparison.json'));
    expect(data.policies).toEqual(['carry on', 'scrap at once', 'scrap it', 'pass it']);
    const sha256 = createHash('sha256').update(SCRAP).digest('hex');
    expect(data.supplements[0]).toEqual({ file: 'scrap.yaml', title: 'Scrap what is off', sha256 });
    // The same response under two names does the same.
    const runs = (policy: string) =>
      data.runs
        .filter((run: { policy: string }) => run.policy === policy)
        .map((run: { measures: object }) => run.measures);
    expect(runs('scrap it')).toEqual(runs('scrap at once'));
    const page = read('comparison.html');
    for (const part of ['Should help: Where it must.', sha256, '--with scrap.yaml --with pass.yaml'])
      expect(page).toContain(part);
  });

  it('is taken by run and check, too', async () => {
    const ran = await at.mendline(['run', line, ...BOTH, '--policy', 'pass it', '--json']);
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({ policies: ['pass it'], supplements: [{}, {}] });
    const checked = await at.mendline(['check', line, ...BOTH]);
    expect(checked.out).toContain('pass it: inspect (gauging)');
    expect(checked.out).toContain('Scrap what is off (scrap.yaml). Should help: Where it must.');
    const json = await at.mendline(['check', line, '--with', 'scrap.yaml', '--json']);
    expect(JSON.parse(json.out).supplements).toMatchObject([{ file: 'scrap.yaml' }]);
  });

  it('tells problems by file', async () => {
    at.file('wrong.yaml', SCRAP.replace('gauging', 'gaugin').replace('scrap it', 'carry on'));
    const { code, err } = await at.mendline(['check', line, '--with', 'wrong.yaml']);
    expect(code).toBe(3);
    expect(err).toContain(`wrong.yaml:6:3: "carry on" is a policy of ${line} already`);
    expect(err).toMatch(/wrong\.yaml: 1 problem\n$/);
    const twice = await at.mendline(['check', line, '--with', 'pass.yaml', '--with', 'pass.yaml']);
    expect(twice.err).toContain('"pass it" is a policy of pass.yaml already');
  });

  it.each([
    [['--with'], '--with expects a value after it'],
    [['--with', ''], '--with expects a value after it'],
    [['--with', 'gone.yaml'], 'gone.yaml: there is no such file; name a supplement, such as'],
  ])('refuses %j', async (args, message) => {
    const { code, err } = await at.mendline(['compare', line, ...args]);
    expect(code).toBeGreaterThan(1);
    expect(err).toContain(message);
  });
});

describe('--only', () => {
  it('compares the policies it names with the first', async () => {
    const { out } = await at.mendline(['compare', line, ...BOTH, '--only', 'pass it', '--json']);
    expect(JSON.parse(out).policies).toEqual(['carry on', 'pass it']);
    const both = ['--only', 'pass it', '--only', 'scrap at once', '--only', 'carry on'];
    const more = await at.mendline(['compare', line, ...BOTH, ...both, '--json']);
    expect(JSON.parse(more.out).policies).toEqual(['carry on', 'scrap at once', 'pass it']);
  });

  it('writes to a folder of its own, and gives its command', async () => {
    const { out } = await at.mendline(['compare', line, '--only', 'scrap at once', '--seeds', '2']);
    const page = join('reports', 'cell-only-scrap-at-once-2-seeds', 'comparison.html');
    expect(out).toContain(page);
    expect(readFileSync(join(at.path, page), 'utf8')).toContain(
      `${line} --only &quot;scrap at once&quot; --seeds 2</code>`,
    );
  });

  it('refuses a name that is none', async () => {
    const { code, err } = await at.mendline(['compare', line, '--only', 'scrap at onec']);
    expect({ code, err }).toEqual({
      code: 2,
      err: 'mendline: --only "scrap at onec" is not in the scenario; did you mean "scrap at once"?\n',
    });
  });
});
