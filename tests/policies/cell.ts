import type { MeasureKey } from '../../src/line/measures.ts';

/** A line with all that a policy of the library may name, and how the policy is judged on it. */
export interface Situation {
  readonly line: string;
  readonly by: MeasureKey;
}

/** Where a policy does better than carrying on, and where worse. */
export interface Pair {
  readonly helps: Situation;
  readonly hurts: Situation;
}

/** Some time within an hour about the second of a run. */
const WHEN = '{ distribution: uniform, low: 30 min, high: 90 min }';

/** A heater that is 10 °C cold moves the rim by 0.35 mm, where 0.3 mm is what the fit allows. */
export const cold = (lasts: string, by = '-10 °C'): string =>
  `  cold: { disturbs: setting, setting: heater, by: ${by}, at: ${WHEN}, for: ${lasts} }`;

/** A time that varies from cycle to cycle. */
const about = (mean: string) => `{ distribution: lognormal, mean: ${mean}, cv: 20 % }`;

/** Frames that are ordered; a run needs some 1400. */
export const ordered = ({ onHand = 400, at = 300, order = 600, takes = '40 min', more = '' } = {}): string =>
  `on-hand: ${onHand}, reorder-at: ${at}, order: ${order}, lead-time: ${takes}${more && `, ${more}`}`;

/** No frames are delivered for some time. */
export const noFrames = (lasts: string): string =>
  `  frames late: { disturbs: supplier, stock: frame, at: ${WHEN}, for: ${lasts} }`;

/** A small cell with the names of the demo: a tray every 20 s or so, which fits the usual frame by 0.35 mm ± 0.3 mm. */
export const cell = ({
  length = '8 h',
  forming = '20 s',
  heater = '',
  rim = '0.05 mm',
  gauging = '10 s',
  every = 4,
  reading = 'repeatability: 0.02 mm',
  assembly = '18 s',
  groove = '0.05 mm',
  fits = 'least: 0.05 mm, most: 0.65 mm',
  frame = 'unlimited: true',
  stock = '',
  bench = false,
  trimming = '8 s',
  /** How the tab varies; without it there is none. */
  tab = '',
  offLimits = 'pass',
  disturbances = '',
} = {}): string => `
mendline: 1
title: small cell
about: Made up for a test.
run: { warm-up: 0 s, length: ${length}, seeds: 1 }
stock:
  sheet: { unlimited: true }
  frame: { ${frame}, features: { groove: { nominal: 120.35 mm, own-sd: ${groove} }${tab && ', notch: { nominal: 18 mm, class: H11, own-sd: 0.01 mm }'} } }
${stock}
parts:
  tray:
    features:
      rim: { nominal: 120 mm, tolerance: 0.25 mm, made-at: forming, gains: { heater: -0.035 mm/°C }, own-sd: ${rim} }
${tab && `      tab: { nominal: 18 mm, class: d11, made-at: trimming, ${tab} }`}
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: ${about(forming)}
    settings: { heater: { target: 148 °C${heater && `, ${heater}`} } }
    to: trimming
  trimming:
    does: trim
    buffer: 8
    cycle: ${about(trimming)}
${tab && '    set-ups: { blade change: { cycles: 1000, takes: 4 min } }\n    tool: { renewed-by: [blade change] }'}
    to: marking
  marking: { does: mark, buffer: 8, cycle: ${about('8 s')}, takes-hold: 100 %, to: gauging }
  gauging:
    does: gauge
    buffer: 8
    cycle: ${about(gauging)}
    every: ${every}
    measures: { rim: { ${reading} }${tab && ', tab: { repeatability: 0.006 mm }'} }
    off-limits: ${offLimits}
    to: assembly
  assembly:
    does: assemble
    buffer: 20
    takes: [frame]
    cycle: ${about(assembly)}
    fits: [{ hole: frame.groove, shaft: rim, ${fits} }${tab && ', { hole: frame.notch, shaft: tab }'}]
    misfit: scrap
    to: good
${
  bench
    ? `  bench:
    does: rework
    buffer: unlimited
    cycle: ${about('30 s')}
    limit: 2
    corrects: { rim: { removes: 80 %, own-sd: 0.02 mm } }
    to: gauging`
    : ''
}
${disturbances && `disturbances:\n${disturbances}`}
policies:
  carry on: []
`;
