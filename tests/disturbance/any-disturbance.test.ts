import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atSeverity } from '../../src/disturbance/severity.ts';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { StandstillError } from '../../src/line/standstill.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { forgotten } from '../line/laws.ts';
import { LENGTH, WARM_UP } from '../line/made-up-line.ts';
import { disturbedLine } from './made-up.ts';

const LINES = 600;

/** The outcome, or null where the line came to a standstill: which ones may, `any-line` looks at. */
function outcomeOf(scenario: Scenario, seed: number): Outcome | null {
  try {
    return simulate(scenario, 'carry on', seed);
  } catch (error) {
    if (error instanceof StandstillError) return null;
    throw error;
  }
}

/** All of an outcome but the number of events, which any disturbance adds to. */
const shown = (outcome: Outcome): string => JSON.stringify({ ...outcome, events: 0 });

const KINDS = [
  ...['setting', 'supplier', 'marks', 'station', 'feature', 'gauge', 'reader', 'lot', 'speed', 'health'],
  ...['crew', 'conveyor', 'demand'],
];

describe('any line whatever under any disturbances', { timeout: 120_000 }, () => {
  // Each run checks itself, and throws if a law of every run is broken.
  it('keeps the laws of every run, runs the same way twice, and is the undisturbed line at severity 0', () => {
    // How often each kind alone changed what the line did.
    const told = new Map<string, number>();
    fc.assert(
      fc.property(disturbedLine, ({ text, seed }) => {
        const scenario = parseScenario(text, 'any.yaml');
        const outcome = outcomeOf(scenario, seed);
        expect(outcomeOf(scenario, seed)).toEqual(outcome);
        const calm = outcomeOf({ ...scenario, disturbances: [] }, seed);
        expect(outcomeOf(atSeverity(scenario, 0), seed)).toEqual(calm);
        outcomeOf(atSeverity(scenario, 0.5), seed);
        outcomeOf(atSeverity(scenario, 3), seed);
        if (outcome) {
          const line = prepare(scenario, 'carry on', seed);
          line.calendar.run(WARM_UP + LENGTH);
          expect(forgotten(line, scenario)).toEqual([]);
        }
        for (const one of scenario.disturbances) {
          const alone = outcomeOf({ ...scenario, disturbances: [one] }, seed);
          const changed = alone && calm && shown(alone) !== shown(calm);
          if (changed) told.set(one.disturbs, (told.get(one.disturbs) ?? 0) + 1);
        }
      }),
      { numRuns: LINES, seed: 6, endOnFailure: true },
    );
    for (const kind of KINDS) expect(told.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(2);
  });
});
