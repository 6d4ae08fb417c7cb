import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { BLANKS, exponential, type Keys, s, scenarioText } from './scenario-text.ts';
import { leadTime, outcome } from './see.ts';

/** Hours of work at each of the four stations of the closed lines. */
const WORK = 2;
const STATIONS = 4;

/**
 * A line that holds `carriers` parts at all times. A part enters the moment that a carrier comes free, by a station
 * that takes no time, and waits for the first station within the line; so the time in the line is that of a whole
 * round.
 */
function closedText(cycle: unknown, carriers: number, batch = 1) {
  const own = { does: 'work', buffer: 'unlimited', cycle, ...(batch > 1 && { batch }) };
  const stations: Record<string, Keys> = {
    entry: { does: 'work', takes: 'blank', cycle: s(0), to: 's1' },
  };
  for (let i = 1; i <= STATIONS; i++) stations[`s${i}`] = { ...own, to: i < STATIONS ? `s${i + 1}` : 'good' };
  return scenarioText(200 * 3600, {
    ...{ stock: BLANKS, stations },
    carriers: { pallet: { number: carriers, from: 'entry', to: `s${STATIONS}` } },
  });
}

const perHour = ({ measures }: Outcome) => measures.throughput_per_h!;
/** Throughput, and the time of a round by way of Little's law, with `carriers` parts in the line. */
const round = (rate: number, carriers: number) => [
  { ...{ quantity: 'throughput', unit: '/h', expected: rate, throughput: true as const }, of: perHour },
  {
    ...{ quantity: 'cycle time', unit: 'h', expected: carriers / rate },
    of: (of: Outcome) => leadTime(of) / 3600,
  },
];
const HOPP = 'Hopp & Spearman, Factory Physics, chapter 7, Penny Fab One (citation from memory)';

/** Best case: constant times; the rate is that of the work until a station is busy always. */
const best = (carriers: number): Case =>
  caseOf<Outcome>({
    id: `L15 best, w=${carriers}`,
    what: `closed line of 4 stations of 2 h, constant, ${carriers} in the line`,
    source: HOPP,
    exact: true,
    length: 20_000 * 3600,
    scenario: closedText(s(WORK * 3600), carriers),
    see: outcome,
    values: round(Math.min(carriers / (STATIONS * WORK), 1 / WORK), carriers),
  });

/** Worst case: all parts move together, so a round takes the work of all of them at each station. */
const worst = caseOf<Outcome>({
  id: 'L15 worst, w=4',
  what: 'the same with 4 in the line that move together',
  source: HOPP,
  option: '`batch: 4` with a cycle of 4 x 2 h',
  exact: true,
  length: 20_000 * 3600,
  scenario: closedText(s(4 * WORK * 3600), 4, 4),
  see: outcome,
  values: round(1 / (STATIONS * WORK), 4),
});

/** Practical worst case w rb/(W0 + w - 1), which mean value analysis gives for equal exponential stations. */
const practical = (id: string, carriers: number, source: string): Case =>
  caseOf<Outcome>({
    id: `${id}, w=${carriers}`,
    what: `closed line of 4 stations of 2 h, exponential, ${carriers} in the line`,
    source,
    length: 200_000 * 3600,
    scenario: closedText(exponential(WORK * 3600), carriers),
    see: outcome,
    values: round(carriers / WORK / (STATIONS + carriers - 1), carriers),
  });

/** L15, L16: lines that hold a fixed number of parts. */
export const CLOSED_LINES: readonly Case[] = [
  ...[1, 2, 4, 6].map(best),
  worst,
  ...[1, 2, 4, 8].map((carriers) => practical('L15 practical worst', carriers, HOPP)),
  practical(
    'L16',
    6,
    'M. Reiser and S. S. Lavenberg (1980), Journal of the ACM 27, 313-322, mean value analysis (citation from memory)',
  ),
];
