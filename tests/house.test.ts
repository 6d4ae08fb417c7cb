import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const src = join(root, 'src');

/** For each folder of src/, the folders it may import from besides itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  kernel: [],
  statistics: [],
  standards: [],
  scenario: ['kernel', 'statistics', 'standards'],
  line: ['scenario', 'kernel', 'statistics', 'standards'],
  disturbance: ['line', 'scenario', 'kernel'],
  policy: ['line', 'scenario', 'kernel', 'statistics'],
  experiment: ['policy', 'disturbance', 'line', 'scenario', 'kernel', 'statistics', 'standards'],
  exercise: ['experiment', 'line', 'scenario', 'kernel', 'statistics'],
  report: ['exercise', 'experiment', 'line', 'scenario', 'kernel', 'statistics', 'standards'],
  classroom: ['report', 'exercise', 'experiment'],
  watch: ['classroom', 'report', 'line'],
  cli: ['report', 'exercise', 'experiment', 'line', 'scenario'],
};
/** These run in a browser page too, so they import nothing from Node. */
const ANYWHERE = [
  'kernel',
  'statistics',
  'standards',
  'scenario',
  'line',
  'disturbance',
  'policy',
  'exercise',
  'classroom',
  'watch',
];

interface Import {
  readonly from: string;
  readonly to: string;
}

const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
const imports: Import[] = files.flatMap((file) => {
  const text = readFileSync(join(src, file), 'utf8');
  const found = text.matchAll(
    /(?:import|export)\s+(type\s)?[^'";]*?from\s+'([^']+)'|import\('([^']+)'\)|import\s+'([^']+)'/g,
  );
  return [...found].map((match) => {
    const target = (match[2] ?? match[3] ?? match[4])!;
    const to = target.startsWith('.') ? relative(src, join(src, dirname(file), target)) : target;
    return { from: file.split(sep).join('/'), to: to.split(sep).join('/') };
  });
});
const within = imports.filter(({ to }) => files.map((file) => file.split(sep).join('/')).includes(to));
const folder = (file: string) => file.split('/')[0]!;

test('the check reads the imports there are', () => {
  expect(within.length).toBeGreaterThan(100);
  expect(imports.filter(({ to }) => to.startsWith('.') || to.startsWith('..'))).toEqual([]);
});

test('folders import downwards only', () => {
  const upward = within.filter(
    ({ from, to }) => folder(from) !== folder(to) && !MAY_IMPORT[folder(from)]?.includes(folder(to)),
  );
  expect(upward).toEqual([]);
});

/** Folders that a run's numbers come from; what is worked out beforehand about a line is no part of a run. */
const RUNS = ['kernel', 'disturbance', 'policy', 'line'];
const FORECASTS = ['line/prediction/', 'line/read-share.ts', 'line/supply/stock-estimate.ts'];

test('what a run is made of uses no function that a JavaScript engine may round as it likes', () => {
  const users = files
    .map((file) => file.split(sep).join('/'))
    .filter((file) => RUNS.includes(folder(file)) && !FORECASTS.some((path) => file.startsWith(path)))
    .filter((file) => {
      const code = readFileSync(join(src, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '');
      return /\*\*|Math\.(?:log|exp|pow|hypot|cbrt|a?(?:sin|cos|tan)h?)\w*\(/.test(code);
    });
  expect(users).toEqual([]);
});

test('the engine folders import nothing from Node', () => {
  const fromNode = imports.filter(
    ({ from, to }) => ANYWHERE.includes(folder(from)) && to.startsWith('node:'),
  );
  expect(fromNode).toEqual([]);
  const users = ANYWHERE.flatMap((name) =>
    files.filter((file) => folder(file.split(sep).join('/')) === name),
  ).filter((file) =>
    /\b(?:process|Buffer\.from|__dirname|require)\b[.(]/.test(readFileSync(join(src, file), 'utf8')),
  );
  expect(users).toEqual([]);
});

test('of the policies, the bound alone reaches true values, and nothing but the making of a line reaches the bound', () => {
  const beside = within.filter(({ from, to }) => folder(from) === 'policy' && folder(to) === 'line');
  const inside = beside.filter(({ to }) => !['line/controls.ts', 'line/level.ts'].includes(to));
  expect([...new Set(inside.map(({ from }) => from))]).toEqual(['policy/foresee.ts']);
  const reaching = within.filter(({ to }) => to === 'policy/foresee.ts').map(({ from }) => from);
  // `responses` takes its installer, which gets the controls and does nothing.
  expect(reaching.sort()).toEqual(['experiment/simulate.ts', 'policy/responses.ts']);
});

test('no file imports itself by way of others', () => {
  const next = new Map<string, string[]>();
  for (const { from, to } of within) next.set(from, [...(next.get(from) ?? []), to]);
  const circles: string[] = [];
  const done = new Set<string>();
  const visit = (file: string, path: string[]): void => {
    if (path.includes(file)) {
      circles.push([...path.slice(path.indexOf(file)), file].join(' > '));
      return;
    }
    if (done.has(file)) return;
    for (const to of next.get(file) ?? []) visit(to, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) visit(file, []);
  expect(circles).toEqual([]);
});

test('the top level holds what the design allows and nothing else', () => {
  const allowed = [
    'README.md',
    'DEVELOPERS.md',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'LICENSE',
    'CITATION.cff',
  ];
  const folders = ['src', 'scenarios', 'tests', 'bin', 'reports', 'node_modules'];
  const others = readdirSync(root).filter(
    (name) => !name.startsWith('.') && !allowed.includes(name) && !folders.includes(name),
  );
  expect(others).toEqual([]);
});
