import { describe, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { expectMean, RUNS } from './by-simulation.ts';
import { GAUGING, gaugedLine } from './cases/gauging.ts';
import { checkCases } from './check-cases.ts';

checkCases('gauging', GAUGING);

/** A lot is accepted with chance `accepted` under the inspection in force, and leads to one of two states. */
interface State {
  readonly accepted: number;
  readonly onAccepted: number;
  readonly onRejected: number;
}

/**
 * Share of lots accepted in the long run under the switching rules, as a Markov chain of ten states: normal inspection
 * with the last rejection 1 to 4 lots ago or longer, tightened inspection with 0 to 4 lots accepted in a row.
 */
function acceptedInTheLongRun(normal: number, tightened: number): number {
  const states: State[] = [
    { accepted: normal, onAccepted: 0, onRejected: 1 },
    ...[2, 3, 4, 0].map((onAccepted) => ({ accepted: normal, onAccepted, onRejected: 5 })),
    ...[6, 7, 8, 9, 0].map((onAccepted) => ({ accepted: tightened, onAccepted, onRejected: 5 })),
  ];
  let shares: number[] = states.map((_, i) => (i === 0 ? 1 : 0));
  for (let step = 0; step < 10_000; step++) {
    const next = states.map(() => 0);
    states.forEach(({ accepted, onAccepted, onRejected }, i) => {
      next[onAccepted]! += shares[i]! * accepted;
      next[onRejected]! += shares[i]! * (1 - accepted);
    });
    shares = next;
  }
  return states.reduce((sum, { accepted }, i) => sum + accepted * shares[i]!, 0);
}

describe('switching between normal and tightened inspection, by simulation', { timeout: 60_000 }, () => {
  // ISO 2859-1:1999, lots of 20 at AQL 4 %: letter C leads up to B on normal inspection, 3 of which 0 may be off limits, and has
  // 5 of which 0 may be on tightened inspection (tables 2-A and 2-B). One part in ten is off limits.
  it('accepts as many lots in the long run as the rules of clause 9 make of the two plans', () => {
    const text = gaugedLine(1.644854, {
      acceptance: { lot: 20, aql: '4 %', rejected: 'scrap' },
      measures: { rim: { repeatability: '0 mm' } },
    });
    const scenario = parseScenario(text(40_000), 'check.yaml');
    const shares = Array.from({ length: RUNS }, (_, i) => {
      const { lotsAccepted, lotsRejected } = simulate(scenario, 'carry on', i + 1).counts;
      return lotsAccepted / (lotsAccepted + lotsRejected);
    });
    expectMean(shares, acceptedInTheLongRun(0.9 ** 3, 0.9 ** 5), 0.01);
  });
});
