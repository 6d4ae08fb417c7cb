import fc from 'fast-check';
import { expect, it } from 'vitest';
import { FailedRunError } from '../../../src/experiment/failed-run.ts';
import { traced } from '../../../src/experiment/traced.ts';
import { logRows } from '../../../src/report/trace/log-rows.ts';
import { ocelText } from '../../../src/report/trace/ocel.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { madeUpLine } from '../../line/made-up-line.ts';
import { brokenRules, type Ocel } from './ocel-rules.ts';
import { SOURCE } from './traced-sample.ts';
import { written } from './written.ts';

/** Lines in the default run. */
const LINES = 15;

it('the log of any line keeps the rules of OCEL, and makes each assembly once of what is in no other', {
  timeout: 240_000,
}, () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(madeUpLine, ({ text, seed }) => {
      const scenario = parseScenario(text, 'any.yaml');
      try {
        const { trace } = traced(scenario, scenario.policies[0]!.name, seed);
        const document = JSON.parse(
          written(ocelText(logRows(trace, true), { ...SOURCE(), trace }, {})).toString(),
        ) as Ocel;
        expect(brokenRules(document)).toEqual([]);
        const { events, objects } = document;
        for (const { type } of [...events, ...objects]) seen.add(type);
        const assemblies = objects.filter(({ type }) => type === 'assembly');
        const made = events.flatMap(({ relationships }) =>
          relationships.flatMap(({ objectId, qualifier }) => (qualifier === 'makes' ? [objectId] : [])),
        );
        expect(made).toEqual(assemblies.map(({ id }) => id));
        const within = assemblies.flatMap(({ relationships }) =>
          relationships.map(({ objectId }) => objectId),
        );
        expect(new Set(within).size).toBe(within.length);
      } catch (error) {
        if (!(error instanceof FailedRunError)) throw error;
      }
    }),
    { numRuns: LINES, seed: 12, endOnFailure: true },
  );
  for (const type of ['started', 'tried', 'state', 'ordered', 'assembly', 'piece', 'lot'])
    expect(seen, type).toContain(type);
});
