import { describe, it } from 'vitest';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';

/** Trays with one hole meet a peg plate with `pegs` pegs: mean and standard deviation of each, mm. */
function assembly(hole: [number, number], peg: [number, number], pegs: number, misfit = 'scrap') {
  const names = Array.from({ length: pegs }, (_, i) => `peg${i}`);
  return scenarioOf(
    '1 min',
    '10 h',
    `
stock:
  sheet: { unlimited: true }
  plate:
    unlimited: true
    features:
${names.map((name) => `      ${name}: { nominal: ${peg[0]} mm, own-sd: ${peg[1]} mm }`).join('\n')}
parts:
  tray:
    features:
      hole: { nominal: ${hole[0]} mm, own-sd: ${hole[1]} mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 10 s, to: joining }
  joining:
    does: assemble
    buffer: 4
    takes: [plate]
    cycle: 2 s
    fits:
${names.map((name) => `      - { hole: hole, shaft: plate.${name}, least: 0 mm, most: 100 mm }`).join('\n')}
    misfit: ${misfit}
    to: good`,
  );
}

const fitRates = (scenario: Scenario) => runsOf(scenario).map(({ measures }) => measures.fit_rate!);

describe('fits by simulation', { timeout: 60_000 }, () => {
  // D10: H7/k6 at 25 mm: hole 0 to +21 um, shaft +2 to +15 um (ISO 286-2), both centred with a sixth of the tolerance
  // as standard deviation: P(clearance > 0) = Phi(2/4.11636) = 0.686469.
  it('peg in hole H7/k6 at 25 mm clears as often as the difference of two normals is positive', () => {
    const rates = fitRates(assembly([25.0105, 0.021 / 6], [25.0085, 0.013 / 6], 1));
    expectMean(rates, 0.686469);
  });

  // D11: n pegs that share the hole's deviation, no margin, equal standard deviations: all clear in 1/(n + 1) of cases
  // (orthant probability at correlation one half; Tong 1990, The Multivariate Normal Distribution, from memory).
  it.each([
    [2, 1 / 3],
    [4, 1 / 5],
  ])('%d pegs against one hole clear together in 1/(n + 1) of cases', (pegs, exact) => {
    expectMean(fitRates(assembly([10, 0.01], [10, 0.01], pegs)), exact, 0.015);
  });

  // D12: the same with a margin of three standard deviations; were the pegs independent it would be 0.933914.
  it('four pegs with a margin clear together more often than if they were independent', () => {
    expectMean(fitRates(assembly([10.03, 0.01], [10, 0.01], 4)), 0.945311, 0.005);
  });
});

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
