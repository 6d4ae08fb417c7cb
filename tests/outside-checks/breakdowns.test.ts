import { describe, it } from 'vitest';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectMean, perSecond, runsOf, scenarioOf } from './by-simulation.ts';

/** Seconds of the constant cycle. */
const CYCLE = 5;

/**
 * Three identical stations in series without places, which fail after 50 min and are repaired in 5 min, both
 * exponential on average.
 *
 * Theory moves all parts of the line at one instant, and lets nothing more happen while one station is down. Here a
 * station that is not down finishes the part in hand, and those below the stopped one also what is still on the way:
 * a cycle or two in which a second station can fail, so that two repairs overlap and their time is lost once, not
 * twice. Counted by working time that chance is, averaged over the three, 4/3 of a cycle in 50 min for each failure,
 * and it saves about half a repair: with a cycle of 5 s, 0.1 % of the time lost, 0.03 % of the rate. The cycle is
 * short so that this stays an order below the half width asked for.
 */
function threeStations(counted: 'working' | 'clock', length = '120 h') {
  const breakdown = `{ every: { distribution: exponential, mean: 50 min }, counted: ${counted},
      repair: { distribution: exponential, mean: 5 min }, cycle: resumes }`;
  const station = (feed: string, to: string) =>
    `{ does: work, ${feed}, cycle: ${CYCLE} s, to: ${to}, breakdowns: { stop: ${breakdown} } }`;
  return scenarioOf(
    '10 h',
    length,
    `
stock:
  blank: { unlimited: true }
stations:
  first: ${station('takes: blank', 'second')}
  second: ${station('buffer: 0', 'third')}
  third: ${station('buffer: 0', 'good')}`,
  );
}

const efficiencies = (scenario: Scenario) => runsOf(scenario).map((outcome) => perSecond(outcome) * CYCLE);

describe('stations that break down, by simulation', { timeout: 60_000 }, () => {
  // L09: J. A. Buzacott (1967), International Journal of Production Research 5, 183-200; S. B. Gershwin (1994),
  // Manufacturing Systems Engineering (figures recomputed): 1/(1 + 3 x 5/50) when only working stations fail.
  it('lose every repair once when failures count working time', () => {
    expectMean(efficiencies(threeStations('working')), 1 / (1 + (3 * 5) / 50));
  });

  // L09: (50/55)^3 when stations fail by the clock, independently of each other.
  it('run while all are up at once when failures count by the clock', () => {
    expectMean(efficiencies(threeStations('clock')), (50 / 55) ** 3);
  });

  // L24: Hopp & Spearman, Factory Physics, chapter 8 (example from memory, figures recomputed): one station, cycle 3,
  // 40 between failures in running time, 8 to repair: availability 5/6, rate 5/18.
  it('a single station whose cycle resumes works at availability over cycle', () => {
    const scenario = scenarioOf(
      '1 h',
      '40 h',
      `
stock:
  blank: { unlimited: true }
stations:
  only:
    does: work
    takes: blank
    cycle: 3 s
    to: good
    breakdowns:
      stop:
        every: { distribution: exponential, mean: 40 s }
        counted: working
        repair: { distribution: exponential, mean: 8 s }
        cycle: resumes`,
    );
    const outcomes = runsOf(scenario);
    expectMean(outcomes.map(perSecond), 5 / 18);
    expectMean(
      outcomes.map(({ stateShares }) => stateShares.only!.down),
      1 / 6,
    );
  });

  // A station that must start its cycle anew needs (e^(a t) - 1)/a working time for a cycle of t at failure rate a, and
  // a repair for each of its e^(a t) - 1 failures: D. P. Gaver (1962), Journal of the Royal Statistical Society B 24,
  // 73-90, preemptive-repeat (citation from memory, formula derived). Life by the exponential law has no memory.
  it('a single station whose cycle restarts pays for every lost attempt', () => {
    const a = 1 / 40;
    const failures = Math.exp(a * 20) - 1;
    const exact = 1 / (failures / a + failures * 8);
    const scenario = scenarioOf(
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
        cycle: restarts`,
    );
    expectMean(runsOf(scenario).map(perSecond), exact);
  });

  // The same failures with `scraps`: a started part survives its cycle of t with probability e^(-a t).
  it('a single station that scraps interrupted cycles passes on e^(-t/life) of its parts', () => {
    const scenario = scenarioOf(
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
        cycle: scraps`,
    );
    expectMean(
      runsOf(scenario).map(({ measures }) => measures.scrap_rate!),
      1 - Math.exp(-20 / 40),
    );
  });
});
