import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Experiment, experimentOf } from '../../../src/experiment/journal/experiment.ts';
import { plan } from '../../../src/experiment/plan.ts';
import type { Outcome } from '../../../src/line/outcome.ts';

/** A folder that is there while `work` is done. */
export function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'mendline-journal-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const TASKS = plan(['carry on', 'stöp'], 2);

export const SOURCES = { version: '1.2.3', scenario: 'abc', supplements: ['s'], modules: [] };
export const EXPERIMENT: Experiment = experimentOf(SOURCES, TASKS);

/** A journal takes an outcome as data, so a little of one will do. */
export const outcomeOf = (run: number): Outcome =>
  ({ ...TASKS[run]!, measures: { scrap_rate: run / 3, fit_rate: null } }) as unknown as Outcome;
