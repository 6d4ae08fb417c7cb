import { mean, sampleVariance } from 'simple-statistics';
import { prepare } from '../../../src/experiment/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { type Case, caseOf } from './case.ts';
import { AIM, gaugedLine } from './gauged-line.ts';
import { type Keys, percent, s } from './scenario-text.ts';

/** Standard deviation of independent noise, mm. */
const NOISE = 0.1;
/** What the feature changes by, mm/°C. */
const GAIN = 0.05;
/** Forming, and a pause in which the part is gauged before the next is loaded, so that each run knows of the last. */
const FORMING = 9;
const PAUSE = 1;
const CYCLE = FORMING + PAUSE;
/** Parts that meet an estimate that is still forming. */
const SETTLING = 100;

const SOURCE =
  'A. Ingolfsson and E. Sachs (1993), Journal of Quality Technology 25, 271-287; E. Del Castillo (2002)';

/**
 * A controlled feature as a scenario.
 * @param believed the gain that the controller believes in over the true one
 */
function controlled(
  rule: Keys,
  { noise = NOISE, believed = 1, paused = true, disturbances = {} },
): (length: number) => string {
  const gains = { heater: `${GAIN} mm/°C` };
  const gain = `${GAIN * believed} mm/°C`;
  return gaugedLine(paused ? FORMING : CYCLE, {
    features: {
      rim: { nominal: `${AIM} mm`, 'made-at': 'forming', 'own-sd': `${noise} mm`, gains },
    },
    forming: {
      settings: { heater: { target: '150 °C' } },
      ...(paused ? { 'set-ups': { gauged: { cycles: 1, takes: s(PAUSE) } } } : {}),
    },
    disturbances,
    policies: {
      retune: [{ do: 'retune', setting: 'heater', by: 'rim', ...rule, gain, deadband: '0 mm' }],
    },
  });
}

/** How far each reading lies from what it should be, mm. */
function deviations(scenario: Scenario, seed: number): number[] {
  const line = prepare(scenario, 'retune', seed);
  const seen: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push((_feature, value) => seen.push(value - AIM));
  line.calendar.run(scenario.run.length);
  return seen;
}

const ratio = (seen: readonly number[]): number => sampleVariance(seen.slice(SETTLING)) / NOISE ** 2;

/** With the right gain the delay of one part changes which noise the estimate knows, and not how much of it. */
const s14 = [
  [0.1, 1.05263],
  [0.3, 1.17647],
  [0.5, 1.33333],
].map(([weight, expected]) =>
  caseOf<number[]>({
    id: `S14 weight=${weight}`,
    what: `a setting retuned by EWMA of weight ${weight} against white noise, gauged one part late`,
    source: SOURCE,
    length: 200_000,
    scenario: controlled({ weight: percent(weight!) }, { paused: false }),
    see: deviations,
    values: [{ quantity: 'variance over that of the noise', expected: expected!, of: ratio }],
  }),
);

/** The true gain over the believed one, and the weight. */
const XI = 1.5;
const WEIGHT = 0.4;
const s15 = { believed: 1 / XI };
const RULE = { weight: percent(WEIGHT) };

const s15Noise = caseOf<number[]>({
  id: 'S15 noise',
  what: `a setting retuned by EWMA of weight ${WEIGHT} against white noise, true gain ${XI} times the believed`,
  source: SOURCE,
  length: 200_000,
  scenario: controlled(RULE, s15),
  see: deviations,
  values: [{ quantity: 'variance over that of the noise', expected: 1.42857, of: ratio }],
});

/** Drift, mm a part. */
const DRIFT = 0.02;
const DAY = 86_400;
/** Longer than any run here, so that it never ends. */
const PARTS = (100 * DAY) / CYCLE;

const drift = {
  ...{ disturbs: 'setting', setting: 'heater', by: `${(DRIFT / GAIN) * PARTS} °C`, ramp: s(PARTS * CYCLE) },
  ...{ at: '0 s', for: '1000 d' },
};

const s15Drift = caseOf<number[]>({
  id: 'S15 drift',
  what: `a setting retuned by EWMA of weight ${WEIGHT} against a drift of ${DRIFT} mm a part, true gain ${XI} times the believed`,
  source: SOURCE,
  length: 200_000,
  scenario: controlled(RULE, { ...s15, noise: DRIFT, disturbances: { drift } }),
  see: deviations,
  values: [
    {
      ...{ quantity: 'mean deviation', unit: 'mm', expected: 0.0333333 },
      of: (seen) => mean(seen.slice(SETTLING)),
    },
  ],
});

/** The first part that meets the step; it is loaded when the step has just happened. */
const STEPPED = 20;
const step = {
  ...{ disturbs: 'setting', setting: 'heater', by: '40 °C' },
  ...{ at: s(STEPPED * CYCLE - PAUSE / 2), for: '1000 d' },
};

const s15Step = caseOf<number[]>({
  id: 'S15 step',
  what: `a setting retuned by EWMA of weight ${WEIGHT} after a step, true gain ${XI} times the believed, no noise`,
  source: SOURCE,
  exact: true,
  length: 25 * 60 * CYCLE,
  scenario: controlled(RULE, { ...s15, noise: 0, disturbances: { step } }),
  see: deviations,
  values: [0, 1, 2].map((k) => ({
    quantity: `deviation ${k + 2} parts after the step over that before`,
    expected: 0.4,
    of: (seen) => seen[STEPPED + k + 1]! / seen[STEPPED + k]!,
  })),
});

/** A deadbeat controller is an EWMA of weight 1: white noise doubles in variance, and a step is gone at once. */
const deadbeat = caseOf<number[]>({
  id: 'S14 weight=1',
  what: 'a setting retuned by the rule deadbeat against white noise',
  source: SOURCE,
  length: 200_000,
  scenario: controlled({ rule: 'deadbeat' }, {}),
  see: deviations,
  values: [{ quantity: 'variance over that of the noise', expected: 2, of: ratio }],
});

/** S14, S15: settings retuned by readings. */
export const RETUNING: readonly Case[] = [...s14, deadbeat, s15Noise, s15Drift, s15Step];
