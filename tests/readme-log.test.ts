import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readScenario } from '../src/experiment/scenario-file.ts';
import { traced } from '../src/experiment/traced.ts';
import { logFiles } from '../src/report/trace/log-files.ts';
import { logRows } from '../src/report/trace/log-rows.ts';
import { logCsv } from '../src/report/trace/log-table.ts';
import { oddTrace, SOURCE } from './report/trace/traced-sample.ts';

const root = join(import.meta.dirname, '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const source = (path: string) => readFileSync(join(root, 'src', path), 'utf8');
const demo = readScenario(join(root, 'scenarios/tray-cell.yaml'));
const { trace } = traced(demo.scenario, 'carry on', 1);

/** The names in the first column of a table, by the head of that column. */
function namesIn(head: string): string[] {
  const table = readme.slice(readme.indexOf(`| ${head} |`)).split('\n\n')[0]!;
  const rows = table.split('\n').slice(2);
  return rows.flatMap((row) => [...row.split('|')[1]!.matchAll(/`([^`]+)`/g)].map(([, name]) => name!));
}

/** A column as the README calls it, whatever the scenario calls its stocks and features. */
const general = (column: string) =>
  column
    .replace(/^(from|mate)_(lot|piece)_.+/, '$1_$2_STOCK')
    .replace(/^(reading|true)_.+_mm$/, '$1_FEATURE_mm')
    .replace(/^clearance_\d+_mm$/, 'clearance_N_mm');

test('the README tells of every event of the log, and of no other', () => {
  const kinds = (path: string) =>
    [...source(path).matchAll(/kind: ((?:'[a-z-]+'(?: \| )?)+)/g)].flatMap(([, all]) =>
      [...all!.matchAll(/'([^']+)'/g)].map(([, kind]) => kind!),
    );
  const [truths] = /type Truth = [\s\S]*?\n\);/.exec(source('line/trace/trace.ts'))!;
  const seen = [...truths.matchAll(/kind: '(\w+)'/g)].map(([, kind]) => `true ${kind}`);
  const how = /how: ((?:'\w+'(?: \| )?)+);/.exec(source('line/trace/trace.ts'))![1]!;
  const asked = [...how.matchAll(/'(\w+)'/g)].map(([, word]) => word!);
  const told = [...source('report/trace/log-rows.ts').matchAll(/event: '([a-z ]+)'/g)].map(
    ([, event]) => event!,
  );
  const spans = ['disturbance', 'response'];
  expect(told).toEqual(expect.arrayContaining(spans));
  const events = [
    ...kinds('line/trace/part-events.ts'),
    ...told.filter((event) => !spans.includes(event)),
    ...spans.flatMap((name) => [`${name} begins`, `${name} ends`]),
    ...asked,
    ...seen,
  ];
  expect(namesIn('event').sort()).toEqual([...new Set(events)].sort());
  // Those of two runs are all among them.
  for (const run of [trace, oddTrace()])
    for (const { event } of logRows(run, true))
      if (!events.includes(event)) expect(event).toBe('in the table');
});

test('the README tells of every column of the log', () => {
  const others = ['shared-crew', 'orders'].map((name) => {
    const { scenario } = readScenario(join(root, `scenarios/${name}.yaml`));
    const short = { ...scenario, run: { ...scenario.run, warmUp: 0, length: 12 * 3600 } };
    return traced(short, scenario.policies[0]!.name, 1).trace;
  });
  const columns = [trace, oddTrace(), ...others].flatMap((run) => {
    const adjusted = { ...run, adjustments: [{ at: 0, setting: 's', how: 'adjust' as const, to: 1 }] };
    const [content] = logCsv(logRows(adjusted, true)) as unknown as [string];
    return content.slice(0, content.indexOf('\r\n')).split(',').map(general);
  });
  // No part of these runs has a flaw that passes unseen.
  expect(namesIn('column of `events.csv`').sort()).toEqual([...new Set([...columns, 'true_flaw'])].sort());
});

/** Bytes of a file that comes in pieces. */
function bytesOf(content: ReturnType<typeof logFiles>[number]['content']): number {
  let sum = 0;
  for (const piece of content) sum += Buffer.byteLength(piece);
  return sum;
}

test('the log of the demo is about as large as the README says', () => {
  const files = logFiles({ ...SOURCE(), trace }, false);
  const [, thousands, ...sizes] =
    /one run of the demo has about (\d+),000 events: (\d+) MB as CSV, (\d+) as OCEL and (\d+) as Parquet/.exec(
      readme.replace(/\s+/g, ' '),
    )!;
  expect(logRows(trace, false).length / 1000 / Number(thousands)).toBeCloseTo(1, 1);
  const [csv, parquet, ocel] = files.map(({ content }) => bytesOf(content) / 1e6);
  for (const [i, size] of [csv!, ocel!, parquet!].entries())
    expect(Math.abs(size - Number(sizes[i]))).toBeLessThanOrEqual(0.5 + 0.05 * size);
});
