import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXIT, EXIT_MEANINGS } from '../src/cli/exit-codes.ts';
import { STATES } from '../src/line/state.ts';
import { STATE_LOOKS } from '../src/report/state-words.ts';
import { VERDICT_TERMS } from '../src/report/verdict-terms.ts';
import { jsonSchema } from '../src/scenario/json-schema.ts';

const root = join(import.meta.dirname, '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const commands = [...readme.matchAll(/```sh\n([\s\S]*?)```/g)].flatMap((block) =>
  block[1]!.trim().split('\n'),
);
/** What the README shows a command to print, by the last command before it. */
const answers = new Map<string, string[]>();
for (const block of readme.matchAll(/```text\n([\s\S]*?)\n```/g)) {
  const before = [...readme.slice(0, block.index).matchAll(/```sh\n([^\n]+)\n```/g)];
  const command = before.at(-1)![1]!;
  answers.set(command, [...(answers.get(command) ?? []), block[1]!]);
}
const scripts = (
  JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> }
).scripts;

/** The words of a command, with what stands between double quotes as one. */
const words = (command: string) =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!);

/** The commands that the README says to fail, with the exit codes it gives them. */
const failing = new Map<string, number>([
  ['node bin/mendline.js run scenarios/knotted.yaml', EXIT.failedRun],
]);

/** Runs mendline from the clone's top. */
function mendline(args: readonly string[]) {
  return spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', maxBuffer: 2 ** 28 });
}

const flat = (text: string) => text.replace(/\s+/g, ' ');

/** A digest keeps a failure readable. */
const digestOf = (path: string) =>
  createHash('sha256')
    .update(readFileSync(join(root, path)))
    .digest('hex');
const PAGES = ['reports/classroom/buffer.html', 'reports/watch/tray-cell-stop-and-fix-seed-1.html'];

function report(name: string): string[] {
  const twins = name === 'tray-cell' ? ['twins.csv'] : [];
  return ['comparison.html', 'comparison.json', 'runs.csv', ...twins].map((file) => {
    const path = join(root, 'reports', name, file);
    if (!existsSync(path)) return `${name}/${file} is missing`;
    return `${name}/${file} ${digestOf(join('reports', name, file))}`;
  });
}

describe('every command the README shows works', () => {
  const shipped = ['tray-cell', 'calm-line', 'pegs', 'spare-elements', 'clips-short'];
  const before = shipped.map(report);
  const pagesBefore = PAGES.map(digestOf);

  test('there are some, npm start and npm test among them', () => {
    expect(commands).toEqual(expect.arrayContaining(['npm start', 'npm test']));
    expect(commands.length).toBeGreaterThan(5);
    // Each answer shown stands behind the command that gives it.
    expect([...answers.values()].flat().length).toBe(readme.split('```text').length - 1);
  });

  // npm test is what runs this; npm start is its own script, run as that script.
  for (const command of commands.filter((command) => command !== 'npm test')) {
    test(command, () => {
      const [, ...args] = words(command);
      if (command === 'npm start')
        expect(scripts.start).toContain('bin/mendline.js compare scenarios/tray-cell.yaml');
      const run = command === 'npm start' ? ['bin/mendline.js', 'compare', 'scenarios/tray-cell.yaml'] : args;
      const { status, stdout, stderr } = mendline(run);
      const code = failing.get(command) ?? EXIT.done;
      expect({ status, stderr: code === EXIT.done ? stderr : '' }).toEqual({ status: code, stderr: '' });
      const printed = code === EXIT.done ? stdout : stderr;
      expect(printed.length).toBeGreaterThan(100);
      // An error is one line, which the README breaks.
      const same = code === EXIT.done ? (text: string) => text : flat;
      for (const answer of answers.get(command) ?? []) expect(same(printed)).toContain(same(answer));
    });
  }

  test('the reports in the repository are what the commands write', () => {
    expect(shipped.map(report)).toEqual(before);
    expect(PAGES.map(digestOf)).toEqual(pagesBefore);
  });
});

test('the README lists the exit codes as they are', () => {
  const rows = [...readme.matchAll(/^\| (\d+) \| (.+?) \|$/gm)].map((row) => [Number(row[1]), row[2]]);
  expect(rows).toEqual(Object.entries(EXIT_MEANINGS).map(([code, meaning]) => [Number(code), meaning]));
  expect(Object.values(EXIT).sort((a, b) => a - b)).toEqual(rows.map(([code]) => code));
});

test('the commands that the README says to fail are among those it shows, with their exit codes', () => {
  for (const [command, code] of failing) {
    expect(commands).toContain(command);
    const before = readme.slice(0, readme.indexOf(command)).split('\n\n').at(-2);
    expect(before).toContain(`exits ${code}`);
  }
});

test('the README explains the states by their words', () => {
  const rows = [...readme.matchAll(/^\| ([a-z -]+) \| (.+?) \|$/gm)].map((row) => [row[1], row[2]]);
  const table = STATES.map((state) => [STATE_LOOKS[state].word, STATE_LOOKS[state].meaning]);
  expect(rows).toEqual(expect.arrayContaining(table));
});

test('the README explains each word and number of a verdict as the page does', () => {
  const section = /^## How to read the verdict$([\s\S]*?)^### /m.exec(readme)![1]!;
  const rows = [...section.matchAll(/^\| (.+?) \| (.+?) \| .+ \|$/gm)].map((row) =>
    row.slice(1, 3).map((cell) => cell!.replaceAll('`', '')),
  );
  expect(rows.slice(1).filter(([term]) => term !== '---')).toEqual(VERDICT_TERMS);
});

test('the README names every section of a scenario and every key that stations have in common', () => {
  interface Schema {
    properties: Record<string, { const?: string; $ref?: string }>;
    $ref?: string;
    $defs: Record<string, Schema & { additionalProperties: { oneOf: Schema[] } }>;
  }
  const schema = JSON.parse(JSON.stringify(jsonSchema())) as Schema;
  const missing = (keys: readonly string[]) => keys.filter((key) => !readme.includes(`\`${key}\``));
  const sections = Object.keys(schema.properties).filter(
    (key) => !['mendline', 'title', 'about'].includes(key),
  );
  expect(sections.length).toBeGreaterThan(8);
  expect(missing(sections)).toEqual([]);
  const named = ($ref: string) => schema.$defs[$ref.split('/').at(-1)!]!;
  const stations = named(schema.properties.stations!.$ref!);
  const kinds = stations.additionalProperties.oneOf.map((one) => (one.$ref ? named(one.$ref) : one));
  for (const kind of ['work', 'arrive']) {
    const found = kinds.find(({ properties }) => properties.does!.const === kind);
    const keys = Object.keys(found!.properties).filter((key) => !['does', 'takes'].includes(key));
    expect(keys.length).toBeGreaterThan(3);
    expect(missing(keys), kind).toEqual([]);
  }
});

test('the README names every key of each kind of station, disturbance and response', () => {
  type Node = { properties?: Record<string, Node & { const?: string }> } & { [key: string]: unknown };
  const missing = new Set<string>();
  let kinds = 0;
  const visit = (node: Node): void => {
    const { does, disturbs, do: response } = node.properties ?? {};
    if ([does, disturbs, response].some((it) => it?.const !== undefined)) {
      kinds++;
      for (const key of Object.keys(node.properties!)) {
        if (!['does', 'disturbs', 'do'].includes(key) && !readme.includes(`\`${key}\``)) missing.add(key);
      }
    }
    for (const value of Object.values(node)) {
      for (const inner of [value].flat())
        if (typeof inner === 'object' && inner !== null) visit(inner as Node);
    }
  };
  visit(JSON.parse(JSON.stringify(jsonSchema())) as Node);
  expect(kinds).toBeGreaterThanOrEqual(8 + 4 + 5);
  expect([...missing]).toEqual([]);
});

test('the files the documents link to are there', () => {
  for (const document of ['README.md', 'DEVELOPERS.md']) {
    const text = readFileSync(join(root, document), 'utf8');
    for (const [, target] of text.matchAll(/\]\(([^)#:]+)\)/g)) {
      expect(existsSync(join(root, dirname(document), target!)), `${document} links to ${target}`).toBe(true);
    }
  }
});

const named = (key: string) => readme.includes(`\`${key}\``) || readme.includes(`\`${key}[]\``);

test('the README names every key of the JSON and every kind of column of the CSV', () => {
  // One with limited stock, one with crews.
  const folder = mkdtempSync(join(tmpdir(), 'mendline-readme-'));
  const kinds = ['tray-cell', 'shared-crew'].map((name) => {
    const out = join(folder, name);
    const { status } = mendline([
      'bin/mendline.js',
      'compare',
      `scenarios/${name}.yaml`,
      '--seeds',
      '1',
      '--out',
      out,
    ]);
    expect(status).toBe(EXIT.done);
    return ['comparison.json', 'runs.csv'].map((file) => readFileSync(join(out, file), 'utf8'));
  });
  rmSync(folder, { recursive: true });
  const columns = new Set<string>();
  const measures = new Set<string>();
  for (const [comparison, csv] of kinds) {
    const data = JSON.parse(comparison!) as { measures: { rows: object[] }[]; runs: object[] };
    const keys = [data, data.measures[0]!, data.measures[0]!.rows[0]!, data.runs[0]!].flatMap((it) =>
      Object.keys(it),
    );
    expect(keys.filter((key) => !named(key) && !['rows', 'policy'].includes(key))).toEqual([]);
    for (const key of Object.keys((data.runs[0] as { measures: object }).measures)) measures.add(key);
    for (const column of csv!.split(/\r?\n/)[0]!.split(','))
      columns.add(column.replace(/^(count|share|stock_out_share|crew_busy_share)_.*/, '$1'));
  }
  const documented = [
    ...['policy', 'seed', ...measures, 'count', 'share'],
    ...['stock_out_share', 'crew_busy_share', 'events'],
  ];
  expect([...columns].sort()).toEqual(documented.sort());
  for (const column of ['count_...', 'share_STATION_STATE', 'stock_out_share_STOCK', 'crew_busy_share_CREW'])
    expect(named(column), column).toBe(true);
  expect(STATES.filter((state) => !named(state))).toEqual([]);
});

test('the README names every key of what check gives as JSON', () => {
  const { stdout } = mendline(['bin/mendline.js', 'check', 'scenarios/shared-crew.yaml', '--json']);
  const data = JSON.parse(stdout) as { stations: object[] };
  const keys = [...Object.keys(data), ...Object.keys(data.stations[0]!)];
  expect(keys.length).toBeGreaterThan(15);
  expect(keys.filter((key) => !named(key))).toEqual([]);
});
