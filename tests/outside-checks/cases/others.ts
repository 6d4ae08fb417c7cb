import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { queueText } from './markov-queue.ts';
import { exponential, type Keys, s, scenarioText } from './scenario-text.ts';
import { inProgress, leadTime, outcome, perSecond } from './see.ts';

/** L20: Little's law, in a line of throughput 0.5 and cycle time 14: M/M/1 with a service rate of 0.5 + 1/14. */
const l20 = caseOf<Outcome>({
  id: 'L20',
  what: 'an M/M/1 line of throughput 0.5 /s and lead time 14 s',
  source: 'J. D. C. Little (1961), Operations Research 9, 383-387',
  length: 1_000_000,
  scenario: queueText(exponential(2), { cycle: exponential(1 / (0.5 + 1 / 14)) }, 5000),
  see: outcome,
  values: [
    {
      ...{ quantity: 'throughput', unit: '/s', expected: 0.5, throughput: true },
      of: perSecond,
    },
    { quantity: 'lead time', unit: 's', expected: 14, sharp: 0.02, of: leadTime },
    { quantity: 'work in progress', expected: 7, sharp: 0.02, of: inProgress },
    {
      quantity: 'work in progress / (throughput x lead time)',
      expected: 1,
      sharp: 0.0005,
      of: (of) => inProgress(of) / (perSecond(of) * leadTime(of)),
    },
  ],
});

/** Repeats that a part may have. */
const LIMIT = 2;
/** Seconds of the gauging cycle. */
const GAUGING = 4;

/**
 * L23: all parts are exactly nominal; a gauge of repeatability 1 mm finds one off limits with a chance that the
 * tolerance sets, anew at every visit. The bench corrects nothing, so the visits of a part are Bernoulli trials.
 */
function rework(id: string, fails: number, tolerance: number, sharpScrap: number): Case {
  const rim = { nominal: '100 mm', tolerance: `${tolerance} mm`, 'made-at': 'forming' };
  const stations: Keys = {
    forming: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(10), to: 'gauging' },
    gauging: {
      ...{ does: 'gauge', buffer: 'unlimited', cycle: s(GAUGING), every: 1 },
      ...{ measures: { rim: { repeatability: '1 mm' } }, 'off-limits': 'bench', to: 'good' },
    },
    bench: {
      ...{ does: 'rework', buffer: 'unlimited', cycle: s(5), limit: LIMIT, corrects: {}, to: 'gauging' },
    },
  };
  const scrapped = fails ** (LIMIT + 1);
  return caseOf<Outcome>({
    id,
    what: `rework with at most ${LIMIT} repeats, each attempt failing with chance ${fails}`,
    source: 'the geometric law',
    length: 9_000_000,
    scenario: scenarioText(3600, {
      stock: { sheet: { unlimited: true } },
      parts: { tray: { features: { rim } } },
      stations,
    }),
    see: outcome,
    values: [
      {
        ...{ quantity: 'share scrapped', expected: scrapped, sharp: sharpScrap },
        of: ({ measures }) => measures.scrap_rate!,
      },
      {
        quantity: 'attempts of a part',
        expected: (1 - scrapped) / (1 - fails),
        // Each takes the same time, so the time that the gauge worked counts them.
        of: (of) => {
          const { good, scrapped } = of.counts;
          return (of.stateShares.gauging!.working * (good / perSecond(of))) / GAUGING / (good + scrapped);
        },
      },
      {
        ...{ quantity: 'share reworked', expected: fails },
        of: ({ measures }) => measures.rework_rate!,
      },
    ],
  });
}

/** L20, L23. */
export const OTHERS: readonly Case[] = [
  l20,
  // A tenth of normal readings lies outside 1.644854 standard deviations, a half outside 0.674490.
  rework('L23', 0.1, 1.644854, 0.03),
  rework('L23 p=0.5', 0.5, 0.67449, 0.01),
];
