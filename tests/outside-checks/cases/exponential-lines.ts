import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { seriesRate } from './chain-lines.ts';
import { erlang, exponential, s, scenarioText, series } from './scenario-text.ts';
import { outcome, partsBetween, perSecond } from './see.ts';

const HUNT = 'G. C. Hunt (1956), Operations Research 4, 674-683 (citation from memory)';
const BOLING =
  'F. S. Hillier and R. W. Boling (1967), Operations Research 15, 286-303 (citation from memory; chain solved anew)';
const BOWL =
  'F. S. Hillier and R. W. Boling (1966), Journal of Industrial Engineering 17, 651-658 (citation from memory; chain solved anew)';
const MUTH =
  'E. J. Muth (1973), International Journal of Production Research 11, 155-169 (citation from memory)';

interface SeriesLine {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  /** A cycle for each station, mean about 1 s. */
  readonly cycles: readonly unknown[];
  readonly places: number;
  readonly expected: number;
  readonly exact?: true;
}

/** Stations in series of which the first never starves and the last is never blocked; blocking after service. */
function line({ id, what, source, cycles, places, expected, exact }: SeriesLine): Case {
  return caseOf<Outcome>({
    ...{ id, what, source, ...(exact && { exact }) },
    length: 600_000,
    scenario: scenarioText(
      1000,
      series(
        cycles.map((cycle) => ({ cycle })),
        places,
      ),
    ),
    see: outcome,
    values: [{ quantity: 'throughput', unit: '/s', expected, throughput: true, of: perSecond }],
  });
}

const between = (places: number) => `${places} place${places === 1 ? '' : 's'} in each gap`;

/** Lines of equal stations of mean 1 s that differ in their places: Erlang cycles of so many phases, 1 exponential. */
const byPlaces = (
  id: string,
  source: string,
  [stations, phases]: readonly [number, number],
  places: readonly number[],
  rate = (B: number) => seriesRate(Array<number>(stations).fill(1), phases, B),
): Case[] =>
  places.map((B) =>
    line({
      id: `${id} B=${B}`,
      what: `${stations} equal ${phases === 1 ? 'exponential' : `Erlang-${phases}`} stations, ${between(B)}`,
      ...{ source, places: B, expected: rate(B) },
      cycles: Array(stations).fill(phases === 1 ? exponential(1) : erlang(phases, 1)),
    }),
  );

const hunt = (places: number) => (places + 2) / (places + 3);

/** Two unequal stations without places: m1 m2 (m1 + m2)/(m1^2 + m1 m2 + m2^2). */
const UNEQUAL = (1 * 1.5 * (1 + 1.5)) / (1 + 1.5 + 1.5 ** 2);
const unequal = (id: string, order: string, rates: readonly number[]): Case =>
  line({
    ...{ id, what: `two exponential stations without places, rates ${order} /s`, source: HUNT },
    ...{ cycles: rates.map((rate) => exponential(1 / rate)), places: 0, expected: UNEQUAL },
  });

/** Two stations without places pass on a part for each longer one of two cycles: 1/E[max(S1, S2)], mean 1. */
const LAWS = [
  { law: 'exponential', cycle: exponential(1), expected: 2 / 3 },
  { law: 'Erlang-2', cycle: erlang(2, 1), expected: 8 / 11 },
  { law: 'Erlang-3', cycle: erlang(3, 1), expected: 16 / 21 },
  {
    law: 'uniform from 0 to 2 s',
    cycle: { distribution: 'uniform', low: s(0), high: s(2) },
    expected: 3 / 4,
  },
  { law: 'constant', cycle: s(1), expected: 1, exact: true as const },
];

/** Means of three stations without places that sum to 3 s. */
const TIMES = [
  [1, 1, 1],
  [1.05, 0.9, 1.05],
  [1.1, 0.8, 1.1],
];

/** L21: the pair as M/M/1/b, u = rate ratio; b counts the parts that the first has finished and the second has not. */
const l21 = (() => {
  const [te1, te2, b] = [21, 20, 4] as const;
  const u = te2 / te1;
  return caseOf<Outcome>({
    id: 'L21',
    what: 'blocking pair of exponential stations of 21 and 20 min with 2 places between, as M/M/1/4',
    source: 'Hopp & Spearman, Factory Physics, chapter 8, blocking (citation from memory)',
    option: 'places = b - 2, since b counts the part on either machine',
    length: 300_000 * 60 * 20,
    scenario: scenarioText(
      1000 * 60 * 20,
      series(
        [te1, te2].map((te) => ({ cycle: exponential(te * 60) })),
        b - 2,
      ),
    ),
    see: outcome,
    values: [
      {
        ...{ quantity: 'throughput', unit: '/min', throughput: true },
        expected: (1 - u ** b) / (1 - u ** (b + 1)) / te1,
        of: (of) => perSecond(of) * 60,
      },
      {
        ...{
          quantity: 'parts between',
          expected: u / (1 - u) - ((b + 1) * u ** (b + 1)) / (1 - u ** (b + 1)),
        },
        of: partsBetween,
      },
    ],
  });
})();

/** L01 to L08, L21, L22: stations in series that do not fail. */
export const EXPONENTIAL_LINES: readonly Case[] = [
  ...byPlaces('L01', HUNT, [2, 1], [0, 1, 2, 3, 5], hunt),
  ...byPlaces('L02', `${HUNT} for 22/39; ${BOLING}`, [3, 1], [0, 1, 2, 3, 4]),
  ...byPlaces('L03', BOLING, [4, 1], [0, 1, 2]),
  ...byPlaces('L04 N=5', BOLING, [5, 1], [0]),
  ...byPlaces('L04 N=6', BOLING, [6, 1], [0]),
  unequal('L05', '1 and 1.5', [1, 1.5]),
  unequal('L05 reversed', '1.5 and 1', [1.5, 1]),
  ...LAWS.map(({ law, ...own }) =>
    line({
      ...{ id: `L06 ${law}`, what: `two stations without places, cycles of mean 1 s: ${law}`, source: MUTH },
      ...{ cycles: [own.cycle, own.cycle], places: 0, expected: own.expected },
      ...(own.exact && { exact: own.exact }),
    }),
  ),
  ...byPlaces('L07', BOLING, [3, 2], [0, 1, 2]),
  ...TIMES.map((times) =>
    line({
      ...{
        id: `L08 ${times.join('/')}`,
        what: `three exponential stations without places, means ${times.join(', ')} s`,
      },
      ...{ source: BOWL, cycles: times.map(exponential), places: 0, expected: seriesRate(times, 1, 0) },
    }),
  ),
  l21,
  line({
    ...{
      id: 'L22',
      what: 'the longer of two exponential times of rates 1 and 2 /s, as the cycle of two stations without places',
    },
    ...{ source: 'elementary: E[max] = 1 + 1/2 - 1/3', cycles: [exponential(1), exponential(1 / 2)] },
    ...{ places: 0, expected: 1 / (1 + 1 / 2 - 1 / 3) },
  }),
];
