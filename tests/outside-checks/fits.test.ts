import { describe, it } from 'vitest';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';
import { FITS } from './cases/fits.ts';
import { checkCases } from './check-cases.ts';

checkCases('fits', FITS);

describe('gauging with error by simulation', { timeout: 60_000 }, () => {
  // D17: limits at 2 sd of the part, gauge sd a quarter of the part's, no guard band: 0.947655 are accepted, and
  // 0.00844831 of these are bad (bivariate normal, JCGM 106:2012). The truth shows as misfit in an assembly with an
  // exact mate whose clearance limits are the part's own limits.
  it('accepts and errs as the bivariate normal law says', () => {
    const scenario = scenarioOf(
      '1 min',
      '50 h',
      `
stock:
  sheet: { unlimited: true }
  block:
    unlimited: true
    features:
      pin: { nominal: 10 mm }
parts:
  tray:
    features:
      hole: { nominal: 20 mm, tolerance: 2 mm, own-sd: 1 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 5 s, to: gauging }
  gauging:
    does: gauge
    buffer: 4
    cycle: 2 s
    every: 1
    measures:
      hole: { repeatability: 0.25 mm }
    off-limits: scrap
    to: joining
  joining:
    does: assemble
    buffer: 4
    takes: [block]
    cycle: 2 s
    fits: [{ hole: hole, shaft: block.pin, least: 8 mm, most: 12 mm }]
    misfit: scrap
    to: good`,
    );
    const outcomes = runsOf(scenario);
    expectMean(
      outcomes.map(({ counts }) => counts.firstAttempts / counts.started),
      0.947655,
    );
    // Bad parts are few: 9 000 of a million.
    expectMean(
      outcomes.map(({ measures }) => 1 - measures.fit_rate!),
      0.00844831,
      0.04,
    );
  });
});
