import { describe, it } from 'vitest';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';
import { FAILING_LINES } from './cases/failing-lines.ts';
import { perSecond } from './cases/see.ts';
import { checkCases } from './check-cases.ts';

checkCases('lines that fail', FAILING_LINES);

/** A station of a cycle of 20 s that fails every 40 s of work, by the exponential law, and takes 8 s to repair. */
const interrupted = (cycle: 'restarts' | 'scraps') =>
  scenarioOf(
    '1 h',
    '60 h',
    `
stock:
  blank: { unlimited: true }
stations:
  only:
    does: work
    takes: blank
    cycle: 20 s
    to: good
    breakdowns:
      stop:
        every: { distribution: exponential, mean: 40 s }
        counted: working
        repair: { distribution: exponential, mean: 8 s }
        cycle: ${cycle}`,
  );

describe('interrupted cycles, by simulation', { timeout: 60_000 }, () => {
  // A station that must start its cycle anew needs (e^(a t) - 1)/a working time for a cycle of t at failure rate a, and
  // a repair for each of its e^(a t) - 1 failures: D. P. Gaver (1962), Journal of the Royal Statistical Society B 24,
  // 73-90, preemptive-repeat (citation from memory, formula derived). Life by the exponential law has no memory.
  it('a single station whose cycle restarts pays for every lost attempt', () => {
    const a = 1 / 40;
    const failures = Math.exp(a * 20) - 1;
    expectMean(runsOf(interrupted('restarts')).map(perSecond), 1 / (failures / a + failures * 8));
  });

  // The same failures with `scraps`: a started part survives its cycle of t with probability e^(-a t).
  it('a single station that scraps interrupted cycles passes on e^(-t/life) of its parts', () => {
    expectMean(
      runsOf(interrupted('scraps')).map(({ measures }) => measures.scrap_rate!),
      1 - Math.exp(-20 / 40),
    );
  });
});
