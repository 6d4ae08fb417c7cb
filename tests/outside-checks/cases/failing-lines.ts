import { sampleVariance } from 'simple-statistics';
import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { deterministicPair, exponentialPair, type Pair, type RateAndLevel } from './chain-lines.ts';
import { exponential, gamma, geometric, s, scenarioText, series } from './scenario-text.ts';
import { intervals, outcome, partsBetween, perSecond, working } from './see.ts';

/** Breakdowns with laws of life and repair, of a cycle that resumes. */
const fails = (every: unknown, repair: unknown, counted: 'working' | 'clock' = 'working') => ({
  breakdowns: { fails: { every, counted, repair, cycle: 'resumes' } },
});

const GERSHWIN = 'S. B. Gershwin (1994), Manufacturing Systems Engineering';
const BUZACOTT = `J. A. Buzacott (1967), International Journal of Production Research 5, 183-200; ${GERSHWIN}`;
const HOPP = 'Hopp & Spearman, Factory Physics, chapter 8 (citation from memory)';
const BY_CLOCK = '`counted: clock`';

/**
 * L09: stations of a cycle that is short beside their lives: theory moves all parts of the line at one instant and lets
 * nothing more happen while one station is down, but here a station that is up finishes the part in hand, and those
 * behind the one that is down also what is still on the way. In that cycle or two another station can fail, so that
 * two repairs overlap and their time is lost once. At a cycle of 1/600 of a life the rate rises by some 0.03 %.
 */
const SHORT = 'a cycle of 1/600 of a life, since the published line moves all its parts at one instant';
const CYCLE = 5;
const LIFE = 3000;
const REPAIR = 300;

function l09(id: string, stations: number, counted: 'working' | 'clock', expected: number): Case {
  const own = { cycle: s(CYCLE), ...fails(exponential(LIFE), exponential(REPAIR), counted) };
  const often = stations > 1 ? 'three stations in series without places that fail' : 'a station that fails';
  return caseOf<Outcome>({
    id: `L09 ${id}`,
    what: `${often} every 50 min ${counted === 'clock' ? 'by the clock' : 'of work'} and take 5 min to repair, cycle ${CYCLE} s`,
    source: BUZACOTT,
    option: counted === 'clock' ? `${BY_CLOCK}; ${SHORT}` : stations > 1 ? SHORT : '',
    length: 9_000_000,
    scenario: scenarioText(50_000, series(Array(stations).fill(own), 0)),
    see: outcome,
    values: [{ quantity: 'efficiency', expected, throughput: true, of: (of) => perSecond(of) * CYCLE }],
  });
}

const PLACES = 'places = N - 2, since N counts the part on either machine';
const byBoth = <T>(of: (i: 0 | 1) => T): T[] => [of(0), of(1)];
const rateAndLevel = ({ rate, level }: RateAndLevel, sharp: number) => [
  {
    ...{ quantity: 'throughput', unit: '/s', expected: rate, throughput: true as const },
    of: perSecond,
  },
  { quantity: 'parts between', expected: level, sharp, of: partsBetween },
];

/**
 * L10, L11: a machine fails at the start of a cycle that it has a part and room for, with chance p, and each cycle of
 * a repair ends it with chance r. So its life is a geometric number of cycles of work, and its repair one of cycles.
 */
function deterministic(id: string, pair: Pair): Case {
  const { p, r, N } = pair;
  return caseOf<Outcome>({
    id,
    what: `two machines of a cycle of 1 s and N = ${N}, which fail with p = ${p.join(', ')} and are repaired with r = ${r.join(', ')} a cycle`,
    source: `S. B. Gershwin and I. C. Schick (1983), Operations Research 31, 354-380; ${GERSHWIN}, chapter 3 (citation from memory; chain solved anew)`,
    option: `${PLACES}; life and repair geometric in steps of a cycle`,
    length: 500_000,
    scenario: scenarioText(
      10_000,
      series(
        byBoth((i) => ({ cycle: s(1), ...fails(geometric(p[i], 1), geometric(r[i], 1)) })),
        N - 2,
      ),
    ),
    see: outcome,
    values: rateAndLevel(deterministicPair(pair), 0.02),
  });
}

/** L12: the same with exponential cycles, lives and repairs. */
const l12 = (() => {
  const mu = [1, 1.2] as const;
  const pair: Pair = { p: [0.02, 0.03], r: [0.2, 0.25], N: 8 };
  return caseOf<Outcome>({
    id: 'L12',
    what: 'two exponential machines of rates 1 and 1.2 /s with N = 8, lives of 50 and 33.3 s of work, repairs of 5 and 4 s',
    source: 'S. B. Gershwin and O. Berman (1981), AIIE Transactions 13, 2-11 (chain solved anew)',
    option: PLACES,
    length: 500_000,
    scenario: scenarioText(
      10_000,
      series(
        byBoth((i) => ({
          cycle: exponential(1 / mu[i]),
          ...fails(exponential(1 / pair.p[i]), exponential(1 / pair.r[i])),
        })),
        pair.N - 2,
      ),
    ),
    see: outcome,
    values: rateAndLevel(exponentialPair(pair, mu), 0.02),
  });
})();

/** Lives of 100 s and repairs of 10 s of the machines through which material flows. */
const FLOW = { p: 0.01, r: 0.1 };

/**
 * L13, L14: material that flows through two machines at 1 a second, cut into parts of `piece` of it, so that N of
 * material are N/piece parts, of which one stands on either machine. What the cutting adds or takes is at most two
 * parts' worth of buffer, and vanishes with the part.
 */
function flow(id: string, N: number, counted: 'working' | 'clock', expected: number, source: string): Case {
  const piece = N === 0 ? 0.05 : 0.1;
  const machine = {
    cycle: s(piece),
    ...fails(exponential(1 / FLOW.p), exponential(1 / FLOW.r), counted),
  };
  const clock = counted === 'clock' ? `${BY_CLOCK}; ` : '';
  return caseOf<Outcome>({
    id: `${id} N=${N}`,
    what: `two machines of continuous flow, 1 /s, N = ${N} between, lives of 100 s ${counted === 'clock' ? 'by the clock' : 'of work'}, repairs of 10 s`,
    source,
    option: `${clock}material cut into parts of ${piece}; places = N/${piece} - 2, or none`,
    length: N === 0 ? 190_000 : 150_000,
    scenario: scenarioText(5000, series([machine, machine], Math.max(0, Math.round(N / piece) - 2))),
    see: outcome,
    values: [
      {
        ...{ quantity: 'throughput', unit: '/s', expected, throughput: true },
        of: (of) => perSecond(of) * piece,
      },
    ],
  });
}

/** Operation-dependent, identical machines of rate 1: derived from the balance equations. */
function operationDependent(N: number): number {
  const { p, r } = FLOW;
  return (N * (1 + r / p) + 2 / p) / (N * (2 + r / p + p / r) + 2 / p + 4 / r);
}

/**
 * Time-dependent, identical machines of rate 1: the second lacks material for a share (1 - e)/(1 + N (lambda + mu)/2)
 * of the time that it is up, e being the efficiency of one alone.
 */
function timeDependent(N: number): number {
  const { p, r } = FLOW;
  const e = r / (p + r);
  return e * (1 - (1 - e) / (1 + (N * (p + r)) / 2));
}

/** L17: the time from one part of a saturated station to the next is its effective process time. */
function effective(name: string, life: number, repair: number): Case {
  const t0 = 15;
  const A = life / (life + repair);
  const c0sq = 0.05;
  const crsq = 1;
  return caseOf<number[]>({
    id: `L17 ${name}`,
    what: `process time of 15 min (squared coefficient of variation 0.05), lives of ${life} min of work, repairs of ${repair} min`,
    source: `${HOPP}; intervals between parts of a station that always has work`,
    length: 500_000 * 60 * 20,
    scenario: scenarioText(
      60_000,
      series(
        [{ cycle: gamma(t0 * 60, c0sq), ...fails(exponential(life * 60), exponential(repair * 60)) }],
        0,
      ),
    ),
    see: intervals,
    values: [
      {
        ...{ quantity: 'effective process time', unit: 'min', expected: t0 / A },
        of: (found) => meanOf(found) / 60,
      },
      {
        quantity: 'its squared coefficient of variation',
        expected: c0sq + (1 + crsq) * A * (1 - A) * (repair / t0),
        sharp: 0.03,
        of: (found) => sampleVariance(found) / meanOf(found) ** 2,
      },
    ],
  });
}
const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

const l24 = caseOf<Outcome>({
  id: 'L24',
  what: 'a station of a cycle of 3 s that resumes, lives of 40 s of work, repairs of 8 s',
  source: HOPP,
  length: 1_000_000,
  scenario: scenarioText(5000, series([{ cycle: s(3), ...fails(exponential(40), exponential(8)) }], 0)),
  see: outcome,
  values: [
    { quantity: 'availability', expected: 5 / 6, of: working('s1') },
    { quantity: 'throughput', unit: '/s', expected: 5 / 18, throughput: true, of: perSecond },
  ],
});

const l10 = { p: [0.01, 0.01], r: [0.1, 0.1] } as const;
const WIJNGAARD = `${GERSHWIN}, chapter 3; J. Wijngaard (1979), AIIE Transactions 11, 42-51 (citation from memory; formula derived)`;
const JACOBS =
  'D. Jacobs and S. M. Meerkov (1995); J. Li and S. M. Meerkov (2009), Production Systems Engineering (citation from memory)';

/** L09 to L14, L17, L24: stations that fail. */
export const FAILING_LINES: readonly Case[] = [
  l09('alone', 1, 'working', LIFE / (LIFE + REPAIR)),
  l09('working time', 3, 'working', 1 / (1 + (3 * REPAIR) / LIFE)),
  l09('clock', 3, 'clock', (LIFE / (LIFE + REPAIR)) ** 3),
  deterministic('L10a', { ...l10, N: 4 }),
  deterministic('L10b', { ...l10, N: 10 }),
  deterministic('L10c', { ...l10, N: 20 }),
  deterministic('L11', { p: [0.02, 0.01], r: [0.1, 0.15], N: 10 }),
  l12,
  ...[0, 5, 10, 20, 50].map((N) => flow('L13', N, 'working', operationDependent(N), WIJNGAARD)),
  ...[0, 10, 20].map((N) => flow('L14', N, 'clock', timeDependent(N), JACOBS)),
  effective('X', 744, 248),
  effective('Y', 114, 38),
  l24,
];
