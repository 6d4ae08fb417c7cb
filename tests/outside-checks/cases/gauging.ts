import { prepare } from '../../../src/experiment/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, percent, s, scenarioText } from './scenario-text.ts';

/** Parts a second. */
const CYCLE = 1;

/** Parts of 100 mm with a standard deviation of 1 mm go straight to a gauge. */
export const gaugedLine = (tolerance: number, gauging: Keys) =>
  scenarioText(0, {
    stock: { sheet: { unlimited: true } },
    parts: {
      tray: {
        features: {
          rim: {
            nominal: '100 mm',
            tolerance: `${tolerance} mm`,
            'own-sd': '1 mm',
            'made-at': 'forming',
          },
        },
      },
    },
    stations: {
      forming: {
        does: 'form',
        takes: 'sheet',
        makes: 'tray',
        'per-sheet': 1,
        cycle: s(CYCLE),
        to: 'gauging',
      },
      gauging: {
        does: 'gauge',
        buffer: 'unlimited',
        cycle: s(0),
        'off-limits': 'scrap',
        to: 'good',
        ...gauging,
      },
    },
  });

/** Shares of the parts that were judged. */
interface Judged {
  readonly badAccepted: number;
  readonly goodRejected: number;
  readonly accepted: number;
}

/** Compares each judgement with the true size of the part. */
function judge(scenario: Scenario, seed: number): Judged {
  const at = prepare(scenario, 'carry on', seed);
  const { limits } = scenario.parts[0]!.features[0]!;
  const gauge = at.gauges.get('gauging')!;
  let good = false;
  const found = { all: 0, badAccepted: 0, goodRejected: 0 };
  gauge.readingListeners.push((feature, _reading, row) => {
    const truth = at.parts.get(row!, feature.truth);
    good = truth >= limits!.lower && truth <= limits!.upper;
  });
  gauge.judgementListeners.push((off) => {
    found.all++;
    if (!off && !good) found.badAccepted++;
    if (off && good) found.goodRejected++;
  });
  at.calendar.run(scenario.run.length);
  const { tally } = at;
  return {
    badAccepted: found.badAccepted / found.all,
    goodRejected: found.goodRejected / found.all,
    // By where the parts went.
    accepted: tally.good / (tally.good + tally.scrapped),
  };
}

interface Errors {
  readonly guard: number;
  readonly badAccepted: number;
  readonly goodRejected: number;
  readonly accepted: number;
  readonly badAmongAccepted: number;
}

/** D17, D18: limits at 2 standard deviations of the part, a gauge of a quarter of one. */
const errors = (id: string, what: string, { guard, ...expected }: Errors): Case =>
  caseOf<Judged>({
    id,
    what: `inspection with a gauge of a quarter of the part's spread, ${what}`,
    source: 'bivariate normal law, e.g. JCGM 106:2012',
    length: 200_000,
    scenario: gaugedLine(2, {
      every: 1,
      measures: { rim: { repeatability: '0.25 mm', guard: `${guard} mm` } },
    }),
    see: judge,
    values: [
      {
        ...{ quantity: 'bad and accepted', expected: expected.badAccepted, sharp: 0.05 },
        of: ({ badAccepted }) => badAccepted,
      },
      {
        ...{ quantity: 'good and rejected', expected: expected.goodRejected, sharp: 0.03 },
        of: ({ goodRejected }) => goodRejected,
      },
      { quantity: 'accepted', expected: expected.accepted, of: ({ accepted }) => accepted },
      {
        ...{ quantity: 'bad among the accepted', expected: expected.badAmongAccepted, sharp: 0.05 },
        of: ({ badAccepted, accepted }) => badAccepted / accepted,
      },
    ],
  });

/** The first lots of many lines, all under normal inspection: the share accepted. */
function firstLots(lot: number, lots: number, scenario: Scenario, seed: number): number {
  let accepted = 0;
  for (let i = 0; i < lots; i++) {
    const at = prepare(scenario, 'carry on', seed * lots + i);
    at.calendar.run((lot + 0.5) * CYCLE);
    accepted += at.tally.lotsAccepted;
  }
  return accepted / lots;
}

interface Lots {
  readonly lot: number;
  /** Share of the parts that are off limits, and the tolerance (mm) beyond which so many lie. */
  readonly share: number;
  readonly tolerance: number;
  readonly expected: number;
  readonly sharp: number;
}

/** D19, D20: AQL 1 %. A run of `length` seconds is as many lots as take that long. */
const lots = (id: string, plan: string, { lot, share, tolerance, expected, sharp }: Lots): Case =>
  caseOf<number>({
    id: `${id} p=${share}`,
    what: `lots of ${lot} with ${percent(share)} off limits, by ${plan}`,
    source: 'ISO 2859-1:1999, tables 1 and 2-A; binomial law',
    option: 'first lots, so that inspection is normal',
    length: 150_000,
    scenario: gaugedLine(tolerance, {
      acceptance: { lot, aql: '1 %', rejected: 'scrap' },
      measures: { rim: { repeatability: '0 mm' } },
    }),
    see: (scenario, seed) => firstLots(lot, Math.round(scenario.run.length / lot), scenario, seed),
    values: [{ quantity: 'share of lots accepted', expected, sharp, of: (accepted) => accepted }],
  });

/** Of a normal law, 1, 2 and 5 % lie further from the mean than so many standard deviations (any table of it). */
const [ONE, TWO, FIVE] = [2.575829, 2.326348, 1.959964];

/** D17 to D20. */
export const GAUGING: readonly Case[] = [
  errors('D17', 'no guard band', {
    ...{ guard: 0, badAccepted: 0.00800608, goodRejected: 0.0148509 },
    ...{ accepted: 0.947655, badAmongAccepted: 0.00844831 },
  }),
  errors('D18', 'with a guard band as wide', {
    ...{ guard: 0.25, badAccepted: 0.00181222, goodRejected: 0.045867 },
    ...{ accepted: 0.910445, badAmongAccepted: 0.00199048 },
  }),
  lots('D19', 'samples of 80 of which 2 may be', {
    ...{ lot: 1000, share: 0.01, tolerance: ONE, expected: 0.953447, sharp: 0.01 },
  }),
  lots('D19', 'samples of 80 of which 2 may be', {
    ...{ lot: 1000, share: 0.02, tolerance: TWO, expected: 0.784419, sharp: 0.025 },
  }),
  lots('D19', 'samples of 80 of which 2 may be', {
    ...{ lot: 1000, share: 0.05, tolerance: FIVE, expected: 0.230621, sharp: 0.08 },
  }),
  lots('D20', 'samples of 50 of which 1 may be', {
    ...{ lot: 400, share: 0.01, tolerance: ONE, expected: 0.910565, sharp: 0.01 },
  }),
  lots('D20', 'samples of 50 of which 1 may be', {
    ...{ lot: 400, share: 0.02, tolerance: TWO, expected: 0.735771, sharp: 0.02 },
  }),
  lots('D20', 'samples of 50 of which 1 may be', {
    ...{ lot: 400, share: 0.05, tolerance: FIVE, expected: 0.279432, sharp: 0.05 },
  }),
];
