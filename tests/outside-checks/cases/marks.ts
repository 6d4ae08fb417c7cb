import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, s, scenarioText } from './scenario-text.ts';
import { outcome, perSecond } from './see.ts';

/** Seconds of the gauging cycle, and of the attempts after the first. */
const GAUGING = 1;
const RETRY = 0.5;

/** Trays are marked and then read where they are gauged; `marking` and `reader` are what the case is about. */
function read(marking: Keys, reader: Keys) {
  const own = { marking: { 'takes-hold': '100 %', ...marking }, reader: { unread: 'pass', ...reader } };
  const stations: Keys = {
    forming: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(4), to: 'marking' },
    marking: { does: 'mark', buffer: 'unlimited', cycle: s(1), ...own.marking, to: 'gauging' },
    gauging: {
      ...{ does: 'gauge', buffer: 'unlimited', cycle: s(GAUGING), every: 1, measures: {} },
      ...{ 'off-limits': 'pass', reader: own.reader, to: 'good' },
    },
  };
  return scenarioText(3600, {
    stock: { sheet: { unlimited: true } },
    parts: { tray: { features: { rim: { nominal: '100 mm', 'made-at': 'forming' } } } },
    stations,
  });
}

const unread = ({ counts }: Outcome): number => counts.unread / (counts.good + counts.scrapped);
/** Every part is gauged once and takes the same time but for its attempts, so the time at work counts them. */
const attempts = (of: Outcome): number =>
  1 + (of.stateShares.gauging!.working / perSecond(of) - GAUGING) / RETRY;

interface Reading {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly marking?: Keys;
  readonly reader: Keys;
  readonly share: number;
  readonly sharp?: number;
  readonly length?: number;
}

/** A case of the share of parts that go unread. */
function unreadCase({
  id,
  what,
  source,
  marking = {},
  reader,
  share,
  sharp,
  length = 240_000,
}: Reading): Case {
  return caseOf<Outcome>({
    ...{ id, what, source, length },
    scenario: read(marking, reader),
    see: outcome,
    values: [{ quantity: 'share unread', expected: share, ...(sharp && { sharp }), of: unread }],
  });
}

/** M05: more than 12 of the 60 codewords of a symbol wrong, each with chance p. */
const m05 = (p: number, share: number, sharp?: number): Case =>
  unreadCase({
    id: `M05 p=${p}`,
    what: `a Data Matrix symbol of 24x24, each codeword wrong with chance ${p}`,
    source: 'the binomial law beyond the Reed-Solomon bound of ISO/IEC 16022',
    reader: { symbol: 'data-matrix 24x24', 'wrong-codewords': `${100 * p} %` },
    share,
    ...(sharp && { sharp }),
    length: p < 0.15 ? 900_000 : 240_000,
  });

const GRADES = { A: '99 %', B: '95 %', C: '80 %', D: '50 %' };

const grades = unreadCase({
  id: 'MR1',
  what: 'grades A to F in shares 50, 25, 15, 6, 4 %, read with chances 0.99, 0.95, 0.8, 0.5, 0',
  source: 'the law of total probability',
  marking: { grades: { A: '50 %', B: '25 %', C: '15 %', D: '6 %', F: '4 %' } },
  reader: { reads: GRADES },
  share: 0.5 * 0.01 + 0.25 * 0.05 + 0.15 * 0.2 + 0.06 * 0.5 + 0.04,
});

const tries = caseOf<Outcome>({
  id: 'MR2',
  what: 'up to 3 attempts at each mark, each reading it with chance 0.6',
  source: 'the geometric law',
  length: 240_000,
  scenario: read({}, { reads: '60 %', tries: 3, retry: s(RETRY) }),
  see: outcome,
  values: [
    { quantity: 'share unread', expected: 0.4 ** 3, of: unread },
    { quantity: 'attempts of a part', expected: (1 - 0.4 ** 3) / 0.6, of: attempts },
  ],
});

/** Reads a mark unless it has one of these grades. */
const unless = (...never: string[]): Keys => ({
  reads: Object.fromEntries(
    ['A', 'B', 'C', 'D', 'F'].map((it) => [it, never.includes(it) ? '0 %' : '100 %']),
  ),
});

/** Values of the normal law Phi from tables: Phi(1) = 0.841345, Phi(0.5) = 0.691462. */
const PHI_1 = 0.841345;
const PHI_HALF = 0.691462;

const lowest = unreadCase({
  id: 'M04 lowest',
  what: 'contrast of mean 47 % and sd 8 % from mark to mark with modulation of mean 35 % and sd 5 %, unread below C',
  source: 'the grade limits and the lowest grade of ISO/IEC 15415; the normal law',
  marking: {
    quality: {
      // C from 40 % up: one standard deviation of a scan below the mean, sqrt(6.4^2 + 2.83549^2) = 7.
      contrast: { mean: '47 %', sd: '6.4 %', 'scan-sd': '2.83549 %' },
      // C from 30 % up.
      modulation: { mean: '35 %', sd: '5 %' },
    },
  },
  reader: unless('D', 'F'),
  share: 1 - PHI_1 * PHI_1,
});

const nonUniform = unreadCase({
  id: 'M02',
  what: 'axial non-uniformity of mean 7 % and sd 2 %, unread where not A',
  source: 'the grade limits of ISO/IEC 15415; the normal law',
  // A up to 6 %.
  marking: { quality: { 'axial-non-uniformity': { mean: '7 %', sd: '2 %' } } },
  reader: unless('B', 'C', 'D', 'F'),
  share: PHI_HALF,
});

const scans = unreadCase({
  id: 'M04 mean',
  what: 'two scans, each of grade A or B with chance a half, of which two Bs make a B',
  source: 'the mean over scans of ISO/IEC 15415',
  marking: { quality: { scans: 2, contrast: { mean: '70 %', 'scan-sd': '1 %' } } },
  reader: unless('B'),
  share: 0.25,
});

const unused = unreadCase({
  id: 'M06',
  what: 'each codeword of a 10x10 symbol wrong with chance 0.1; one wrong leaves 0.6 unused, which is B',
  source: 'unused error correction of ISO/IEC 15415; the binomial law',
  marking: {
    quality: { 'unused-error-correction': { symbol: 'data-matrix 10x10', 'wrong-codewords': '10 %' } },
  },
  reader: unless('A'),
  share: 0.9 ** 8,
});

/** The chance that a mark does not take. */
const FAILS = 0.3;

const reMarked = caseOf<Outcome>({
  id: 'MR3',
  what: 'marks that take with chance 0.7, made anew at most twice where they did not',
  source: 'the geometric law',
  length: 240_000,
  scenario: read(
    { 'takes-hold': `${100 * (1 - FAILS)} %` },
    { reads: '100 %', unread: { 're-mark': 'marking', limit: 2, afterwards: 'scrap' } },
  ),
  see: outcome,
  values: [
    {
      quantity: 'times that a part is marked anew',
      expected: FAILS + FAILS ** 2,
      of: ({ counts }) => counts.reMarked / (counts.good + counts.scrapped),
    },
    {
      quantity: 'share scrapped',
      expected: FAILS ** 3,
      sharp: 0.02,
      of: ({ counts }) => counts.scrapped / (counts.good + counts.scrapped),
    },
  ],
});

/** M02, M04 to M06; MR1 to MR3: what follows from grades, attempts and new marks by elementary laws of chance. */
export const MARKS: readonly Case[] = [
  m05(0.1, 0.00568101, 0.02),
  m05(0.15, 0.106246),
  m05(0.2, 0.42356),
  ...[grades, tries, lowest, nonUniform, scans, unused, reMarked],
];
