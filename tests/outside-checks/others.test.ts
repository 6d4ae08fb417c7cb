import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { OTHERS } from './cases/others.ts';
import { exponential, scenarioText, series } from './cases/scenario-text.ts';
import { inProgress, leadTime, perSecond } from './cases/see.ts';
import { checkCases } from './check-cases.ts';

checkCases('others', OTHERS);

describe("Little's law in what a run reports", { timeout: 60_000 }, () => {
  // L20: J. D. C. Little (1961), Operations Research 9, 383-387. Over a window the identity holds but for the ends: the
  // integral of the number in the line lacks what the first leavers had spent before the window, and contains what the
  // last parts have spent in it. Each end is the sum of the ages of the parts then in the line: at most one on each
  // of 4 stations and 3 x 4 in buffers, and no part of a first-in first-out line this short has stayed ten mean lead
  // times. That bounds the difference of work in progress from throughput x lead time.
  it('gives work in progress = throughput x lead time, up to the parts that straddle the window', () => {
    const window = 40 * 3600;
    const most = 16;
    const cycles = [1, 0.9, 1, 0.8].map((mean) => ({ cycle: exponential(mean) }));
    const scenario = parseScenario(scenarioText(900, series(cycles, 4))(window), 'check.yaml');
    for (let seed = 1; seed <= 10; seed++) {
      const outcome = simulate(scenario, 'carry on', seed);
      const stay = leadTime(outcome);
      const number = inProgress(outcome);
      const bound = (most * 10 * stay) / window;
      expect(bound / number, 'the bound must be able to fail').toBeLessThan(0.002);
      expect(Math.abs(number - perSecond(outcome) * stay)).toBeLessThan(bound);
    }
  });
});
