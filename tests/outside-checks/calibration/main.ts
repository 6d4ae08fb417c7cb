// Runs every experiment of the calibration, writes reports/interval-calibration.md and fails when a figure is missed.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname } from 'node:path';
import { Tinypool } from 'tinypool';
import type { Calibration } from './calibration.ts';
import { GROUPS } from './cases/index.ts';
import { judge } from './judge.ts';
import { EXPERIMENTS, type Judged, table } from './table.ts';
import type { Batch } from './worker.ts';

const REPORT = 'reports/interval-calibration.md';
/** Experiments that a thread does at a time. */
const BATCH = 250;

const threads = availableParallelism();
const pool = new Tinypool({
  filename: new URL('./worker.js', import.meta.url).href,
  minThreads: threads,
  maxThreads: threads,
});

/** One line on each case as it is judged, since the whole takes minutes. */
async function judged(of: Calibration): Promise<Judged> {
  const batches: Batch[] = [];
  for (let from = 0; from < EXPERIMENTS; from += BATCH)
    batches.push({ id: of.id, from, to: Math.min(EXPERIMENTS, from + BATCH) });
  const hits = await Promise.all(batches.map(async (batch) => (await pool.run(batch)) as number));
  const judgement = judge(
    of,
    hits.reduce((sum, some) => sum + some, 0),
    EXPERIMENTS,
  );
  console.error(`${judgement.passed ? 'passed' : 'MISSED'}  ${of.id}: ${judgement.share.value}`);
  return { of, judgement };
}

const groups = await Promise.all(
  GROUPS.map(async ({ title, cases }) => ({ title, cases: await Promise.all(cases.map(judged)) })),
);
await pool.destroy();

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
mkdirSync(dirname(REPORT), { recursive: true });
writeFileSync(REPORT, table(groups, version));
const missed = groups.flatMap(({ cases }) => cases).filter(({ judgement }) => !judgement.passed).length;
console.error(`${missed === 0 ? 'all passed' : `${missed} missed`}: ${REPORT}`);
if (missed > 0) process.exitCode = 1;
