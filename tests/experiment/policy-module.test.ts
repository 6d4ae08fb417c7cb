import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PolicyModuleLoader, withModules } from '../../src/experiment/policy-module.ts';
import { readPolicyModule } from '../../src/experiment/policy-module-file.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { startModule } from '../../src/policy/module/start.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { Scratch, shipped } from '../cli/command.ts';
import { gaugedCell, small } from '../line/small-line.ts';

let at: Scratch;
beforeAll(() => {
  at = new Scratch();
});
afterAll(() => at.remove());

const scenario = small('100 s', gaugedCell());
const read = (text: string, name = 'code.ts') => readPolicyModule(at.file(name, text), 1);

/** What a policy whose start holds this code does to a short run. */
async function runs(body: string): Promise<unknown> {
  const file = await read(`export default { name: 'a', start(cell) { ${body} } };`);
  const module = new PolicyModuleLoader(file).load(1);
  return simulate(scenario, 'carry on', 1, false, (controls) =>
    startModule(module, controls, scenario, file.path),
  );
}

describe('a policy module', () => {
  it('is read with its name and the hash of its text', async () => {
    const text = "export default { name: 'tune by hand', start(cell: unknown): void {} };";
    const { path, name, sha256 } = await read(text);
    expect({ path, name }).toEqual({ path: join(at.path, 'code.ts'), name: 'tune by hand' });
    expect(sha256).toBe(createHash('sha256').update(text).digest('hex'));
  });

  it.each(['code.js', 'code.mjs', 'code.mts'])('may be a %s', async (name) => {
    expect((await read("export default { name: 'a', start() {} };", name)).name).toBe('a');
  });

  it('may have what TypeScript has beside types, and a byte order mark', async () => {
    const text = `\uFEFFimport type { Cell } from 'mendline/policy';
import { type Reading } from 'mendline/policy';
enum How { Much = 3 }
const names: readonly string[] = ['a', 'b'];
export default { name: names[0]! + How.Much, start(cell: Cell): void {} } satisfies object;`;
    expect((await read(text)).name).toBe('a3');
  });

  it.each([
    ['', 'has no default export; expected export default { name: "...", start(cell) { ... } }'],
    ['only words here', 'line 1, column 6: Unexpected token, expected ";"'],
    ['let a = 1;\nlet a = 2;', "Identifier 'a' has already been declared, at line 2"],
    ['export default () => 1', 'its default export is a function; expected'],
    ['export default null', 'its default export is null; expected'],
    ['export default { start() {} }', 'its policy has no "name"; expected'],
    ["export default { name: '', start() {} }", 'its policy\'s "name": expected a name'],
    ['export default { name: 5, start() {} }', 'its policy\'s "name": expected a name'],
    ["export default { name: 'a', strat() {} }", 'its policy has no function "start"'],
    ["\n\nthrow new TypeError('no luck');", 'threw as it was loaded, at line 3: TypeError: no luck'],
    ['for (;;) {}', 'did not load within 1 s, as if it looped for ever'],
    [
      "(async () => { throw new Error('late') })(); export default { name: 'a', start() {} }",
      'left a promise that failed, at line 1: late',
    ],
    [
      "import { readFileSync } from 'node:fs'; readFileSync('x');",
      'imports "node:fs": a policy module is one file and imports types alone',
    ],
    ["const fs = require('fs');", 'imports "fs": a policy module'],
  ])('is refused as %j', async (text, message) => {
    await expect(read(text)).rejects.toThrow(`${join(at.path, 'code.ts')}: `);
    await expect(read(text)).rejects.toThrow(message);
  });

  it('must be a file of its kind that is there', async () => {
    mkdirSync(join(at.path, 'folder.ts'));
    await expect(readPolicyModule(join(at.path, 'none.ts'), 1)).rejects.toThrow('there is no such file');
    await expect(readPolicyModule(join(at.path, 'folder.ts'), 1)).rejects.toThrow('this is a folder');
    await expect(read('a: 1', 'code.yaml')).rejects.toThrow('expected a file of TypeScript or JavaScript');
  });

  it('joins the policies of the scenario under a name of its own', async () => {
    const file = await read("export default { name: 'a', start() {} };");
    expect(withModules(scenario, [file]).policies.map(({ name }) => name)).toEqual(['carry on', 'a']);
    expect(() => withModules(scenario, [file, file])).toThrow('there is a policy "a" already');
    const clash = await read("export default { name: 'carry on', start() {} };");
    expect(() => withModules(scenario, [clash])).toThrow('give this one another name');
  });
});

describe('the world of a policy module', () => {
  it.each([
    ['Math.random()', 'Math.random is out of reach here: random numbers come from cell.random'],
    ['Date.now()', 'Date is out of reach here: the time of the run is cell.now'],
    ['new Date()', 'Date is out of reach here'],
    ['performance.now()', 'performance is out of reach here'],
    ['setTimeout(() => {}, 5)', 'setTimeout is out of reach here: a policy acts at once'],
    ['Promise.resolve()', 'Promise is out of reach here'],
    ["import('node:fs')", 'Promise is out of reach here'],
    ['process.exit()', 'process is out of reach here'],
    ["fetch('x')", 'fetch is out of reach here'],
    ["console.log('x')", 'console is out of reach here: to see a value, throw it as an error'],
    ["require('fs')", 'imports "fs"'],
    ["eval('1')", 'eval is not defined'],
    ["new Function('return 1')()", 'Code generation from strings disallowed'],
    ["cell.hold.constructor('return process')()", 'cell.hold.constructor is not a function'],
    ["(() => 1).constructor('return 1')()", 'Code generation from strings disallowed'],
    ['new Intl.NumberFormat()', 'Intl is not defined'],
    ['new SharedArrayBuffer(1)', 'SharedArrayBuffer is not defined'],
    ['new WeakRef({})', 'WeakRef is not defined'],
    ["'a'.localeCompare('b')", 'localeCompare is not a function'],
    ['return (async () => {})()', 'returned a promise'],
  ])('is without chance, clock and program: %s', async (body, message) => {
    await expect(runs(body)).rejects.toThrow(message);
  });

  it('has the language', async () => {
    const body = `
      const all = [...new Set([3, 1, 2])].sort((a, b) => a - b).map((x) => Math.abs(-x));
      const text = JSON.stringify({ all, at: new Map([[1, 'one']]).get(1), big: (2n ** 64n).toString() });
      if (text !== '{"all":[1,2,3],"at":"one","big":"18446744073709551616"}') throw new Error(text);`;
    await expect(runs(body)).resolves.toBeDefined();
  });

  it('begins anew with each run', async () => {
    const file = await read(`
      let runs = 0;
      globalThis.kept = (globalThis.kept ?? 0) + 1;
      export default { name: 'a', start() { if (++runs + kept > 2) throw new Error('not the first'); } };`);
    const loader = new PolicyModuleLoader(file);
    for (let i = 0; i < 3; i++) (loader.load(1).start as () => void)();
    const once = loader.load(1).start as () => void;
    once();
    expect(once).toThrow('not the first');
  });
});

describe('the example of a policy as code', () => {
  it('gives the same outcome as the response that it writes out', async () => {
    const path = fileURLToPath(new URL('../../scenarios/policies/retune-in-code.ts', import.meta.url));
    const file = await readPolicyModule(path, 1);
    const own = parseScenario(readFileSync(shipped('tray-cell.yaml'), 'utf8'), 'tray-cell.yaml');
    const cell = withModules(own, [file]);
    const loader = new PolicyModuleLoader(file);
    for (const seed of [1, 2, 3]) {
      const code = simulate(cell, file.name, seed, false, (controls) =>
        startModule(loader.load(1), controls, cell, path),
      );
      const response = simulate(cell, 'retune forming', seed);
      expect({ ...code, policy: '' }).toEqual({ ...response, policy: '' });
      expect({ ...code, policy: '' }).not.toEqual({ ...simulate(cell, 'carry on', seed), policy: '' });
    }
  });
});
