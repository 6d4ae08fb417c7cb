import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXIT, EXIT_MEANINGS } from '../src/cli/exit-codes.ts';

const root = join(import.meta.dirname, '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const commands = [...readme.matchAll(/```sh\n([\s\S]*?)```/g)].flatMap((block) =>
  block[1]!.trim().split('\n'),
);
/** What the README shows a command to print, by command. */
const answers = new Map<string, string[]>();
for (const [, command, answer] of readme.matchAll(/```sh\n([^\n]+)\n```\n\n```text\n([\s\S]*?)\n```/g)) {
  answers.set(command!, [...(answers.get(command!) ?? []), answer!]);
}
const scripts = (
  JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> }
).scripts;

/** The words of a command, with what stands between double quotes as one. */
const words = (command: string) =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!);

function report(name: string): string[] {
  return ['comparison.html', 'comparison.json', 'runs.csv'].map((file) => {
    const path = join(root, 'reports', name, file);
    if (!existsSync(path)) return `${name}/${file} is missing`;
    // A digest keeps a failure readable.
    return `${name}/${file} ${createHash('sha256').update(readFileSync(path)).digest('hex')}`;
  });
}

describe('every command the README shows works', () => {
  const shipped = ['tray-cell', 'calm-line'];
  const before = shipped.map(report);

  test('there are some, npm start and npm test among them', () => {
    expect(commands).toEqual(expect.arrayContaining(['npm start', 'npm test']));
    expect(commands.length).toBeGreaterThan(5);
    // Each answer shown stands behind the command that gives it.
    expect(answers.size).toBe(readme.split('```text').length - 1);
  });

  // npm test is what runs this; npm start is its own script, run as that script.
  for (const command of commands.filter((command) => command !== 'npm test')) {
    test(command, () => {
      const [, ...args] = words(command);
      if (command === 'npm start')
        expect(scripts.start).toContain('bin/mendline.js compare scenarios/tray-cell.yaml');
      const run = command === 'npm start' ? ['bin/mendline.js', 'compare', 'scenarios/tray-cell.yaml'] : args;
      const printed = execFileSync(process.execPath, run, {
        cwd: root,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      expect(printed.length).toBeGreaterThan(100);
      for (const answer of answers.get(command) ?? []) expect(printed).toContain(answer);
    });
  }

  test('the reports in the repository are what the commands write', () => {
    expect(shipped.map(report)).toEqual(before);
  });
});

test('the README lists the exit codes as they are', () => {
  const rows = [...readme.matchAll(/^\| (\d+) \| (.+?) \|$/gm)].map((row) => [Number(row[1]), row[2]]);
  expect(rows).toEqual(Object.entries(EXIT_MEANINGS).map(([code, meaning]) => [Number(code), meaning]));
  expect(Object.values(EXIT).sort((a, b) => a - b)).toEqual(rows.map(([code]) => code));
});

test('the files the documents link to are there', () => {
  for (const document of ['README.md', 'DEVELOPERS.md']) {
    const text = readFileSync(join(root, document), 'utf8');
    for (const [, target] of text.matchAll(/\]\(([^)#:]+)\)/g)) {
      expect(existsSync(join(root, dirname(document), target!)), `${document} links to ${target}`).toBe(true);
    }
  }
});

test('the README names every key of the JSON and every kind of column of the CSV', () => {
  const [comparison, , csv] = ['comparison.json', 'comparison.html', 'runs.csv'].map((file) =>
    readFileSync(join(root, 'reports/tray-cell', file), 'utf8'),
  );
  const data = JSON.parse(comparison!) as { measures: { rows: object[] }[]; runs: object[] };
  const named = (key: string) => readme.includes(`\`${key}\``) || readme.includes(`\`${key}[]\``);
  const keys = [data, data.measures[0]!, data.measures[0]!.rows[0]!, data.runs[0]!].flatMap((it) =>
    Object.keys(it),
  );
  expect(keys.filter((key) => !named(key) && !['rows', 'policy'].includes(key))).toEqual([]);
  const columns = csv!
    .split(/\r?\n/)[0]!
    .split(',')
    .map((column) => column.replace(/^(count|share|stock_out_share)_.*/, '$1'));
  const measures = Object.keys((data.runs[0] as { measures: object }).measures);
  const documented = ['policy', 'seed', ...measures, 'count', 'share', 'stock_out_share', 'events'];
  expect([...new Set(columns)]).toEqual(documented);
});
