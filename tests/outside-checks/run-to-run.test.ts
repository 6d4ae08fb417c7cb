import { sampleVariance } from 'simple-statistics';
import { describe, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { expectMean } from './by-simulation.ts';

const NOISE = 0.1;
const HOURS = 30;

/** Trays with independent normal noise, each gauged without error before the second tray after it is loaded. */
const scenario = (weight: number) =>
  parseScenario(
    `mendline: 1
title: check
about: a controlled process whose output variance is known
run: { warm-up: 0 s, length: ${HOURS} h, seeds: 1 }
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming, own-sd: ${NOISE} mm, gains: { heater: 0.05 mm/°C } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: 10 s
    settings:
      heater: { target: 150 °C }
    to: gauging
  gauging:
    does: gauge
    buffer: 1
    cycle: 1 s
    every: 1
    measures:
      rim: { repeatability: 0 mm }
    off-limits: pass
    to: good
policies:
  retune: [{ do: retune, setting: heater, by: rim, weight: ${weight} %, deadband: 0 mm }]
`,
    'check.yaml',
  );

describe('run-to-run control by simulation', { timeout: 60_000 }, () => {
  // S14: A. Ingolfsson and E. Sachs (1993), Journal of Quality Technology 25, 271-287: an EWMA controller of weight w and
  // right gain that meets white noise makes its variance 2/(2 - w) times as large. The newest tray is not yet gauged
  // when the next is loaded, but the estimate takes each offset without the adjustment it was formed with, so the
  // delay changes which noise it knows and not how much of it.
  it.each([10, 30, 50])('inflates white noise by 2/(2 - weight): weight of %d percent', (weight) => {
    const line = scenario(weight);
    const ratios = Array.from({ length: 30 }, (_, i) => {
      const at = prepare(line, 'retune', i + 1);
      const seen: number[] = [];
      at.gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading));
      at.calendar.run(HOURS * 3600);
      // The first hundred trays meet an estimate that is still forming.
      return sampleVariance(seen.slice(100)) / NOISE ** 2;
    });
    expectMean(ratios, 2 / (2 - weight / 100));
  });
});
