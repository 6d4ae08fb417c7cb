import { max, mean, min, sampleVariance } from 'simple-statistics';
import { prepare } from '../../../src/experiment/simulate.ts';
import { Controls } from '../../../src/line/controls.ts';
import type { Line } from '../../../src/line/line.ts';
import { follow } from '../../../src/policy/responses.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { Ewma } from '../../../src/statistics/charts/ewma.ts';
import { type Case, caseOf } from './case.ts';
import { AIM, gaugedLine } from './gauged-line.ts';
import type { Keys } from './scenario-text.ts';

/** Of single readings, so that a shift in mm is one in sigmas. */
const SIGMA = 1;
/** One reading a second. */
const CYCLE = 1;

/** Tells when a response acts, and lets the line go on, so that several charts see the same parts. */
class Heard extends Controls {
  readonly #told: () => void;

  constructor(line: Line, told: () => void) {
    super(line);
    this.#told = told;
  }

  override hold(): void {
    this.#told();
  }

  override release(): void {}
}

/**
 * Share of the run lengths to be expected in a run that are counted. Their number is fixed beforehand, since a count of
 * what is complete by some time leaves out the long ones.
 */
const COUNTED = 0.8;

/** For each response of the policy, the mean of its first so many run lengths, readings. */
function meanRunLengths(scenario: Scenario, seed: number, expected: readonly number[]): number[] {
  const line = prepare(scenario, 'carry on', seed);
  let readings = 0;
  const first = scenario.parts[0]!.features[0]!.name;
  line.gauges.get('gauging')!.readingListeners.push(({ spec }) => {
    if (spec.name === first) readings++;
  });
  const { length } = scenario.run;
  const charts = scenario.policies[1]!.responses.map((response, i) => {
    const chart = {
      left: Math.max(2, Math.floor((COUNTED * length) / CYCLE / expected[i]!)),
      at: 0,
      count: 0,
    };
    const told = () => {
      if (chart.left === 0) return;
      chart.left--;
      chart.count++;
      chart.at = readings;
    };
    follow([response], new Heard(line, told));
    return chart;
  });
  for (let at = length; charts.some(({ left }) => left > 0); at += length) line.calendar.run(at);
  return charts.map(({ at, count }) => at / count);
}

interface Charted {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  /** The chart's own keys; sigma is given here. */
  readonly chart: Keys;
  /** Readings that make one point, in which run lengths are counted. */
  readonly meanOf?: number;
  /** Mean run length by shift, sigmas. */
  readonly lengths: readonly (readonly [shift: number, points: number, own?: Keys])[];
}

/** Run lengths from here on are simulated by themselves, for they need more readings in one run of the validation. */
const LONG = 20;
const MANY = 100_000;
const FEW = 8_000;
const RUNS = 30;

/**
 * The interval's half width that run lengths with a coefficient of variation of 1 have, which is about the most they
 * can have: at 99 %, 2.756 standard errors, and half as much again for luck.
 */
const sharpOf = (points: number, meanOf: number, readings: number): number =>
  (1.5 * 2.756) / Math.sqrt((RUNS * COUNTED * readings) / (points * meanOf));

/** One line: each shift is that of a feature of its own, made too large by the mould, with a chart of its own. */
function lineOf({ id, what, source, chart, meanOf = 1, lengths }: Charted, many: number): Case {
  const features = Object.fromEntries(
    lengths.map(([shift], i) => [
      `f${i}`,
      {
        ...{ nominal: `${AIM} mm`, 'made-at': 'forming' },
        ...{ mould: `${AIM + shift} mm`, 'own-sd': `${SIGMA} mm` },
      },
    ]),
  );
  const responses = lengths.map(([, , own = {}], i) => ({
    ...{ do: 'stop-and-fix', station: 'forming', takes: '0 s' },
    watch: { at: 'gauging', of: `f${i}`, sigma: `${SIGMA} mm`, 'mean-of': meanOf, ...chart, ...own },
  }));
  const readings = lengths.map(([, points]) => points * meanOf);
  return caseOf<number[]>({
    ...{ id, what, source, length: many * CYCLE },
    scenario: gaugedLine(CYCLE, { features, policies: { watched: responses } }),
    see: (scenario, seed) => meanRunLengths(scenario, seed, readings),
    values: lengths.map(([shift, points, own], i) => ({
      quantity: `mean run length at a shift of ${shift} sigma${own ? `, ${JSON.stringify(own)}` : ''}`,
      unit: meanOf > 1 ? 'means' : 'readings',
      expected: points,
      sharp: sharpOf(points, meanOf, many),
      of: (seen) => seen[i]! / meanOf,
    })),
  });
}

/** The long run lengths on one line, the short ones on another. */
function charted(of: Charted): Case[] {
  const long = of.lengths.filter(([, points]) => points >= LONG);
  const short = of.lengths.filter(([, points]) => points < LONG);
  return [
    ...(long.length > 0 ? [lineOf({ ...of, lengths: long }, MANY)] : []),
    ...(short.length > 0 ? [lineOf({ ...of, id: `${of.id} short`, lengths: short }, FEW)] : []),
  ];
}

/** What the gauge reads of one feature of independent values, without a shift, in sigmas. */
function readingsOf(scenario: Scenario, seed: number): number[] {
  const line = prepare(scenario, 'carry on', seed);
  const seen: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push((_feature, value) => seen.push((value - AIM) / SIGMA));
  line.calendar.run(scenario.run.length);
  return seen;
}

const PLAIN = gaugedLine(CYCLE, {
  features: { rim: { nominal: `${AIM} mm`, 'made-at': 'forming', 'own-sd': `${SIGMA} mm` } },
});

/** The mean range of samples of `n` readings in a row. */
function meanRangeOf(readings: readonly number[], n: number): number {
  const ranges = Array.from({ length: Math.floor(readings.length / n) }, (_, i) => {
    const sample = readings.slice(n * i, n * (i + 1));
    return max(sample) - min(sample);
  });
  return mean(ranges);
}

/** The variance of a running mean of the readings, over theirs. */
function smoothed(readings: readonly number[], weight: number): number {
  const chart = new Ewma({ chart: 'ewma', weight, limit: 9 });
  const means = readings.map((reading) => {
    chart.next(reading);
    return chart.mean;
  });
  // The first hundred come from a mean that still knows its start.
  return sampleVariance(means.slice(100)) / SIGMA ** 2;
}

const d21 = caseOf<number[]>({
  ...{ id: 'D21', what: 'samples of independent normal readings', length: 100_000 },
  source:
    'the constant d2 of control charts, standard table; L. H. C. Tippett (1925), Biometrika 17, 364-387',
  ...{ scenario: PLAIN, see: readingsOf },
  values: (
    [
      [2, 1.12838],
      [3, 1.69257],
      [4, 2.05875],
      [5, 2.32593],
    ] as const
  ).map(([n, expected]) => ({
    ...{ quantity: `mean range of ${n}`, unit: 'sigma', expected, sharp: 0.005 },
    of: (seen) => meanRangeOf(seen, n),
  })),
});

const s13 = caseOf<number[]>({
  ...{ id: 'S13', what: 'a running mean (EWMA) of independent readings', length: 100_000 },
  source: 'S. W. Roberts (1959), Technometrics 1, 239-250; NIST/SEMATECH e-Handbook 6.3.2.4',
  ...{ scenario: PLAIN, see: readingsOf },
  values: (
    [
      [0.1, 0.0526316],
      [0.2, 0.111111],
      [0.3, 0.176471],
      [1, 1],
    ] as const
  ).map(([weight, expected]) => ({
    ...{ quantity: `variance ratio at weight ${weight}`, expected },
    of: (seen) => smoothed(seen, weight),
  })),
});

/** D21, S01 to S06, S09 to S11, S13: charts as policies watch them. */
export const CHARTS: readonly Case[] = [
  d21,
  ...charted({
    id: 'S01',
    what: 'a Shewhart chart of single readings, limits at 3 sigma',
    source: 'W. A. Shewhart (1931); D. C. Montgomery, Introduction to Statistical Quality Control',
    chart: { chart: 'shewhart', limit: 3 },
    lengths: [
      [0, 370.398],
      [0.5, 155.224],
      [1, 43.8947],
      [2, 6.30296],
      [3, 2],
    ],
  }),
  ...charted({
    id: 'S02',
    what: 'a Shewhart chart of means of 5, limits at 3 sigma',
    source: 'D. C. Montgomery, Introduction to Statistical Quality Control',
    chart: { chart: 'shewhart', limit: 3 },
    meanOf: 5,
    lengths: [
      [0.5, 33.4008],
      [1, 4.49531],
      [1.5, 1.56649],
    ],
  }),
  ...charted({
    id: 'S03',
    what: 'a CUSUM chart, slack 0.5, limit 4',
    source: 'J. M. Lucas and R. B. Crosier (1982), Technometrics 24, table 1',
    chart: { chart: 'cusum', slack: 0.5, limit: 4 },
    lengths: [
      [0, 167.684],
      [0.25, 74.224],
      [0.5, 26.6302],
      [0.75, 13.2851],
      [1, 8.38313],
      [1.5, 4.74717],
      [2, 3.34277],
      [2.5, 2.61952],
      [3, 2.19448],
      [4, 1.70846],
      [5, 1.30874],
    ],
  }),
  ...charted({
    id: 'S04',
    what: 'a one-sided CUSUM chart, slack 0.5, limit 3',
    source: 'D. Brook and D. A. Evans (1972), Biometrika 59, section 4.3',
    chart: { chart: 'cusum', slack: 0.5, limit: 3, side: 'up' },
    lengths: [
      [0, 117.596],
      [1.5, 3.74911],
    ],
  }),
  ...charted({
    id: 'S05',
    what: 'a one-sided CUSUM chart, slack 0.25, limit 8',
    source: 'the integral equation of E. S. Page (1954), Biometrika 41; printed in manuals to ten digits',
    chart: { chart: 'cusum', slack: 0.25, limit: 8, side: 'up' },
    lengths: [
      [2.5, 4.15008],
      [2.5, 4.10616, { 'head-start': '1.25 %' }],
    ],
  }),
  ...charted({
    id: 'S06',
    what: 'a CUSUM chart, slack 0.5, limit 5',
    source: 'D. C. Montgomery; J. M. Lucas and R. B. Crosier (1982), Technometrics 24',
    chart: { chart: 'cusum', slack: 0.5, limit: 5 },
    lengths: [
      [0, 465.444],
      [0.25, 139.494],
      [0.5, 37.9961],
      [0.75, 17.0483],
      [1, 10.376],
      [1.5, 5.74722],
      [2, 4.00887],
      [2.5, 3.11369],
      [3, 2.57325],
      [4, 2.01257],
      [5, 1.6938],
    ],
  }),
  ...charted({
    id: 'S09',
    what: 'an EWMA chart, weight 0.5, limit 3.071',
    source: 'J. M. Lucas and M. S. Saccucci (1990), Technometrics 32, table 3',
    chart: { chart: 'ewma', weight: '50 %', limit: 3.071 },
    lengths: [
      [0, 499.906],
      [0.25, 254.785],
      [0.5, 88.7954],
      [0.75, 35.9133],
      [1, 17.4766],
      [1.5, 6.5262],
      [2, 3.628],
      [2.5, 2.49727],
      [3, 1.92567],
      [3.5, 1.57658],
      [4, 1.33613],
      [5, 1.07311],
    ],
  }),
  ...charted({
    id: 'S10',
    what: 'an EWMA chart, weight 0.5, limit 2',
    source: 'S. V. Crowder (1987), Technometrics 29, table 1',
    chart: { chart: 'ewma', weight: '50 %', limit: 2 },
    lengths: [
      [0, 26.4519],
      [0.5, 11.895],
      [1, 4.9064],
      [1.5, 2.80119],
      [2, 1.94522],
      [3, 1.26221],
      [4, 1.04568],
    ],
  }),
  ...charted({
    id: 'S11',
    what: 'an EWMA chart, weight 0.25, limit 3',
    source:
      'the integral equation of S. V. Crowder (1987), Technometrics 29; printed in manuals to ten digits',
    chart: { chart: 'ewma', weight: '25 %', limit: 3 },
    lengths: [[1, 11.1543]],
  }),
  s13,
];
