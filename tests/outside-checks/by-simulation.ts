import { mean, sampleStandardDeviation } from 'simple-statistics';
import { expect } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';

/**
 * How far a simulated mean may lie from the exact value, in standard errors of that mean. Over 30 runs (29 degrees
 * of freedom) a right engine exceeds 3.5 once in about 650 checks. Seeds are fixed, so a check that passes once
 * passes always until something in the engine changes.
 */
const STANDARD_ERRORS = 3.5;

/** Half width of a 95 % interval, in standard errors. */
const HALF_WIDTH = 1.96;

/** Runs of one check, each with a seed of its own: 1, 2, ... */
export const RUNS = 30;

/** A full scenario around `body`, which gives the sections from `stock` on; times with their units. */
export function scenarioOf(warmUp: string, length: string, body: string): Scenario {
  const head = `mendline: 1\ntitle: check\nabout: a line whose answer is known\n`;
  const run = `run: { warm-up: ${warmUp}, length: ${length}, seeds: ${RUNS} }\n`;
  return parseScenario(`${head}${run}${body}\npolicies:\n  carry on: []\n`, 'check.yaml');
}

/** The outcomes of the runs of a scenario under the policy that does nothing. */
export function runsOf(scenario: Scenario, runs = RUNS): Outcome[] {
  return Array.from({ length: runs }, (_, i) => simulate(scenario, 'carry on', i + 1));
}

/**
 * Checks the mean of one value a run against theory. The runs must first be sharp enough for the check to mean
 * anything: half width of the 95 % interval within `sharp` of the exact value.
 */
export function expectMean(values: readonly number[], exact: number, sharp = 0.01, what = 'mean'): void {
  const error = sampleStandardDeviation([...values]) / Math.sqrt(values.length);
  const off = (mean([...values]) - exact) / error;
  expect(error, `${what}: runs without any spread cannot be judged by it`).toBeGreaterThan(0);
  expect((HALF_WIDTH * error) / Math.abs(exact), `${what}: relative half width of the runs`).toBeLessThan(
    sharp,
  );
  expect(Math.abs(off), `${what}: standard errors between the runs and ${exact}`).toBeLessThanOrEqual(
    STANDARD_ERRORS,
  );
}
