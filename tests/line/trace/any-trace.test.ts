import fc from 'fast-check';
import { expect, it } from 'vitest';
import { FailedRunError } from '../../../src/experiment/failed-run.ts';
import { simulate } from '../../../src/experiment/simulate.ts';
import { traced } from '../../../src/experiment/traced.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { madeUpLine } from '../made-up-line.ts';
import { expectAgreement } from './replayed.ts';

/** Lines in the default run. */
const LINES = 100;

it('a trace of any line leaves its run as it is, and agrees with all that the line counts by itself', {
  timeout: 240_000,
}, () => {
  const kinds = new Map<string, number>();
  fc.assert(
    fc.property(madeUpLine, ({ text, seed }) => {
      const scenario = parseScenario(text, 'any.yaml');
      const policy = scenario.policies[0]!.name;
      try {
        const { trace, outcome } = traced(scenario, policy, seed);
        expect(outcome).toEqual(simulate(scenario, policy, seed));
        expectAgreement(trace, outcome);
        for (const kind of new Set(trace.events.map((event) => event.kind)))
          kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
        const { crews, demand } = trace;
        if (crews.some(({ jobs }) => jobs.length > 0)) kinds.set('job', (kinds.get('job') ?? 0) + 1);
        if (demand && demand.handed.length > 0) kinds.set('handed', (kinds.get('handed') ?? 0) + 1);
      } catch (error) {
        // Some lines come to a standstill, with a trace and without.
        if (!(error instanceof FailedRunError)) throw error;
        expect(() => simulate(scenario, policy, seed)).toThrow();
      }
    }),
    { numRuns: LINES, seed: 11, endOnFailure: true },
  );
  for (const kind of [
    'started',
    'waits',
    'begins',
    'ends',
    'read',
    'gauged',
    'tried',
    'good',
    'scrapped',
    'turned-away',
    'on-carrier',
    'off-carrier',
    'job',
    'handed',
  ])
    expect(kinds.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(LINES / 50);
});
