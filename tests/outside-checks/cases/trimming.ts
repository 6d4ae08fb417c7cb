import jstat from 'jstat';
import { prepare } from '../../../src/experiment/simulate.ts';
import type { Line } from '../../../src/line/line.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, percent, s, scenarioText } from './scenario-text.ts';
import { outcome, perSecond } from './see.ts';

interface Normal {
  pdf(x: number, mean: number, sd: number): number;
  cdf(x: number, mean: number, sd: number): number;
}
const { normal } = jstat.jStat as unknown as { readonly normal: Normal };
const density = (z: number): number => normal.pdf(z, 0, 1);
const beyond = (z: number): number => normal.cdf(-z, 0, 1);

const mm = (length: number): string => `${length} mm`;

/** Sheets of one tray each with one feature, made where `feature` says, and the stations after forming. */
const trays = (feature: Keys, next: string, stations: Keys) =>
  scenarioText(3600, {
    stock: { sheet: { unlimited: true } },
    parts: { tray: { features: { edge: { nominal: '100 mm', ...feature } } } },
    stations: {
      forming: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(10), to: next },
      ...stations,
    },
  });

/** Cuts of a tool before it is renewed. */
const LIFE = 100;

/** A trimming station whose tool is renewed after so many cuts. */
const trimming = (tool: Keys): Keys => ({
  ...{ does: 'trim', buffer: 'unlimited', cycle: s(5), to: 'good' },
  'set-ups': { blade: { cycles: LIFE, takes: s(20) } },
  tool: { 'renewed-by': ['blade'], ...tool },
});

interface Edges {
  readonly mean: number;
  readonly variance: number;
}

/** Mean and variance of the edges of good parts about their design, mm and mm²; of those `counted` only. */
const edgesOf =
  (counted: (line: Line, row: number) => boolean) =>
  (scenario: Scenario, seed: number): Edges => {
    const line = prepare(scenario, 'carry on', seed);
    const { warmUp, length } = scenario.run;
    line.calendar.run(warmUp);
    const { truth, spec } = line.features.get('edge')!;
    let parts = 0;
    let sum = 0;
    let squares = 0;
    line.good.leaving.push((row) => {
      if (!counted(line, row)) return;
      const off = line.parts.get(row, truth) - spec.aim;
      parts++;
      sum += off;
      squares += off * off;
    });
    line.calendar.run(warmUp + length);
    const mean = sum / parts;
    return { mean, variance: squares / parts - mean * mean };
  };

const edges = edgesOf(() => true);

const SHIFT = 0.2;
const SPREAD = 0.15;
const OWN = 0.02;

/** The k-th of n cuts, counted from 0, has its edge moved by k/n of the shift, and each k is as frequent. */
const drift = caseOf({
  id: 'trim-drift',
  what: `edges cut by a tool that moves them by ${SHIFT} mm over its ${LIFE} cuts`,
  source: 'the discrete uniform law: mean (n - 1)/2, variance (n^2 - 1)/12; any handbook of probability',
  length: 2_000_000,
  scenario: trays(
    { 'made-at': 'trimming', 'own-sd': mm(OWN), wear: { per: LIFE, shift: mm(SHIFT) } },
    'trimming',
    { trimming: trimming({}) },
  ),
  see: edges,
  values: [
    {
      ...{ quantity: 'mean shift of the edge', unit: 'mm', expected: (SHIFT * (LIFE - 1)) / (2 * LIFE) },
      of: ({ mean }) => mean,
    },
    {
      ...{ quantity: 'variance of the edge', unit: 'mm²' },
      expected: OWN ** 2 + (SHIFT ** 2 * (LIFE ** 2 - 1)) / (12 * LIFE ** 2),
      of: ({ variance }) => variance,
    },
  ],
});

/** The standard deviation at the k-th cut is k/n of the spread; variances of independent terms add up. */
const scatter = caseOf({
  id: 'trim-scatter',
  what: `edges cut by a tool that scatters them with ${SPREAD} mm after its ${LIFE} cuts`,
  source:
    'independent variances add up; mean of k^2 for k = 0 ... n - 1 is (n - 1)(2n - 1)/6; any handbook of probability',
  length: 2_000_000,
  scenario: trays(
    { 'made-at': 'trimming', 'own-sd': mm(OWN), wear: { per: LIFE, spread: mm(SPREAD) } },
    'trimming',
    { trimming: trimming({}) },
  ),
  see: edges,
  values: [
    {
      ...{ quantity: 'variance of the edge', unit: 'mm²' },
      expected: OWN ** 2 + (SPREAD ** 2 * (LIFE - 1) * (2 * LIFE - 1)) / (6 * LIFE ** 2),
      of: ({ variance }) => variance,
    },
  ],
});

const BURR = { first: 0.02, grows: 0.1, own: 0.02, most: 0.1, deburring: 8 };
/** The share of parts of a tool whose burr is too high: the mean of normal tails over its cuts. */
const tooHigh =
  Array.from({ length: LIFE }, (_, k) =>
    beyond((BURR.most - BURR.first - (BURR.grows * k) / LIFE) / BURR.own),
  ).reduce((sum, share) => sum + share) / LIFE;

/** Seconds that a station worked for each part that left. */
const workFor =
  (station: string) =>
  (of: Outcome): number => {
    const { good, scrapped } = of.counts;
    return (of.stateShares[station]!.working * (good / perSecond(of))) / (good + scrapped);
  };

const burr = caseOf<Outcome>({
  id: 'trim-burr',
  what: 'parts deburred behind a tool whose burr grows beyond the height allowed, of normal variation',
  source: 'the normal law, averaged over the cuts of a tool; any handbook of probability',
  length: 2_000_000,
  scenario: trays({ 'made-at': 'forming' }, 'trimming', {
    trimming: trimming({
      burr: {
        ...{ first: mm(BURR.first), per: LIFE, grows: mm(BURR.grows), 'own-sd': mm(BURR.own) },
        ...{ most: mm(BURR.most), deburring: s(BURR.deburring) },
      },
    }),
  }),
  see: outcome,
  values: [
    {
      ...{ quantity: 'share deburred', expected: tooHigh },
      of: ({ counts }) => counts.deburred / counts.good,
    },
    {
      ...{ quantity: 'work for a part', unit: 's', expected: 5 + BURR.deburring * tooHigh },
      of: workFor('trimming'),
    },
  ],
});

const TRUNCATED =
  'N. L. Johnson, S. Kotz and N. Balakrishnan (1994), Continuous Univariate Distributions 1 (cited from memory)';

const SD = 0.1;
/** Limits and reach of the rework, in standard deviations. */
const [LIMIT, REACH] = [1.2, 2];
const REMOVES = 0.9;
/** Of the rework itself, mm: so little that no part is off limits again. */
const ADDED = 0.005;
const LOOK = 4;
const PACE = 30;
/** The share of parts that are high and within reach, and the sum of their deviations over all parts, in sd. */
const within = beyond(LIMIT) - beyond(REACH);
const off = density(LIMIT) - density(REACH);

/** What the gauge lets pass or the bench sends back, without any error of gauging, is a cut-off normal law. */
const reach = caseOf<Outcome>({
  id: 'rework-reach',
  what: 'rework that can make features smaller only, and only by so much, of normal features',
  source: `the tails and the truncated mean of the normal law: ${TRUNCATED}`,
  length: 2_000_000,
  scenario: trays({ 'made-at': 'forming', tolerance: mm(LIMIT * SD), 'own-sd': mm(SD) }, 'gauging', {
    gauging: {
      ...{ does: 'gauge', buffer: 'unlimited', cycle: s(1), every: 1 },
      ...{ measures: { edge: { repeatability: '0 mm' } }, 'off-limits': 'bench', to: 'good' },
    },
    bench: {
      ...{ does: 'rework', buffer: 'unlimited', cycle: s(LOOK), limit: 1, to: 'gauging' },
      corrects: {
        edge: {
          ...{ removes: percent(REMOVES), 'own-sd': mm(ADDED) },
          ...{ most: mm(REACH * SD), only: 'down', takes: `${PACE} s/mm` },
        },
      },
    },
  }),
  see: outcome,
  values: [
    {
      ...{ quantity: 'share out of reach', expected: beyond(LIMIT) + beyond(REACH) },
      of: ({ counts }) => counts.hopeless / (counts.good + counts.scrapped),
    },
    {
      ...{ quantity: 'share scrapped', expected: beyond(LIMIT) + beyond(REACH) },
      of: ({ measures }) => measures.scrap_rate!,
    },
    {
      ...{ quantity: 'share reworked', expected: 2 * beyond(LIMIT) },
      of: ({ measures }) => measures.rework_rate!,
    },
    {
      ...{ quantity: 'work at the bench for a part', unit: 's' },
      expected: 2 * beyond(LIMIT) * LOOK + PACE * REMOVES * SD * off,
      of: workFor('bench'),
    },
  ],
});

/** What is left of a normal law between the limit and the reach, the share that is not removed of it. */
const left = caseOf({
  id: 'rework-left',
  what: 'the features of reworked parts after such rework',
  source: `the mean and the variance of the truncated normal law: ${TRUNCATED}`,
  length: reach.length,
  scenario: reach.scenario,
  see: edgesOf((line, row) => line.parts.get(row, line.reworked) === 1),
  values: [
    {
      ...{ quantity: 'mean deviation', unit: 'mm', expected: ((1 - REMOVES) * SD * off) / within },
      of: ({ mean }) => mean,
    },
    {
      ...{ quantity: 'variance', unit: 'mm²' },
      expected:
        ADDED ** 2 +
        ((1 - REMOVES) * SD) ** 2 *
          (1 + (LIMIT * density(LIMIT) - REACH * density(REACH)) / within - (off / within) ** 2),
      of: ({ variance }) => variance,
    },
  ],
});

/** Trimming with wear and burr; rework that looks first. */
export const TRIMMING: readonly Case[] = [drift, scatter, burr, reach, left];
