import { describe, it } from 'vitest';
import type { Outcome } from '../../src/line/outcome.ts';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';

/** Seconds of the gauging cycle. */
const GAUGING = 4;

/**
 * All parts are exactly nominal; a gauge of repeatability 1 mm finds one off limits with a chance that the tolerance
 * sets, anew at every visit. The bench corrects nothing, so the visits of a part are Bernoulli trials.
 */
function loop(tolerance: number, length: string) {
  return scenarioOf(
    '1 h',
    length,
    `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: ${tolerance} mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: gauging }
  gauging:
    does: gauge
    buffer: unlimited
    cycle: ${GAUGING} s
    every: 1
    measures:
      rim: { repeatability: 1 mm }
    off-limits: bench
    to: good
  bench:
    does: rework
    buffer: unlimited
    cycle: 5 s
    limit: 2
    corrects: {}
    to: gauging`,
  );
}

const left = ({ counts }: Outcome) => counts.good + counts.scrapped;

/** Gaugings per part that left, from the time the gauge worked: each takes the same time. */
const attempts = (hours: number) => (outcome: Outcome) =>
  (outcome.stateShares.gauging!.working * hours * 3600) / GAUGING / left(outcome);

describe('rework with a limit, by simulation', { timeout: 60_000 }, () => {
  // L23: with at most m repeats and each attempt failing with chance p, p^(m+1) are scrapped after
  // (1 - p^(m+1))/(1 - p) attempts: the geometric law. p = 0.1 lies outside 1.644854 sd of the normal law.
  // One scrapped part in 1000 makes the scrap rate coarse: within 7 % it still tells m = 2 from 1 or 3 tenfold.
  it('scraps 0.1 % of parts that fail one gauging in ten and may be reworked twice', () => {
    const outcomes = runsOf(loop(1.644854, '100 h'));
    expectMean(
      outcomes.map(({ counts }) => counts.scrapped / counts.started),
      0.001,
      0.07,
    );
    expectMean(outcomes.map(attempts(100)), 1.11);
    expectMean(
      outcomes.map(({ measures }) => measures.rework_rate!),
      0.1,
    );
  });

  // L23 again where it is sharp: p = 0.5 lies outside 0.674490 sd; scrap 1/8 after 7/4 attempts.
  it('scraps an eighth of parts that fail every other gauging', () => {
    const outcomes = runsOf(loop(0.67449, '20 h'));
    expectMean(
      outcomes.map(({ measures }) => measures.scrap_rate!),
      0.125,
      0.015,
    );
    expectMean(outcomes.map(attempts(20)), 1.75);
    expectMean(
      outcomes.map(({ measures }) => measures.rework_rate!),
      0.5,
    );
  });
});
