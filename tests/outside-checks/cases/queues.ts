import { medianSorted } from 'simple-statistics';
import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { type MarkovQueue, markovText, numbersAndTimes, queueText, theory } from './markov-queue.ts';
import { exponential, gamma, type Keys, s } from './scenario-text.ts';
import { leadTime, levels, outcome, perSecond, stays, windowMeans, working } from './see.ts';
import { HOUR, MINUTE, SECOND } from './unit.ts';

const LOST = '`when-full: lost`; places = K - c, since K counts those served too';
const LOOKS = 'by looks at regular times';

const HILLIER =
  'Hillier & Lieberman, Introduction to Operations Research, queueing chapter, County Hospital example (citation from memory)';
const GROSS = 'Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory';
const TAHA = 'Taha, Operations Research: An Introduction, queueing chapter';

/** Arrivals of one validation run. */
const ARRIVALS = 400_000;

interface Queue {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly queue: MarkovQueue;
  readonly sharp?: number;
}

/** Mean numbers and times of a queue. */
function means({ id, what, source, queue, sharp }: Queue): Case {
  const expected = theory(queue);
  const { unit, most, arrivals, servers } = queue;
  const seconds = unit.seconds;
  return caseOf<Outcome>({
    ...{ id, what, source, ...(most !== undefined && { option: LOST }) },
    length: (ARRIVALS * seconds) / arrivals,
    scenario: markovText(queue, 200),
    see: outcome,
    values: [
      ...numbersAndTimes(expected, servers, unit, sharp),
      ...(most === undefined
        ? []
        : [
            {
              ...{ quantity: 'rate of entering', unit: `/${unit.name}`, expected: expected.entering },
              throughput: true as const,
              of: (of: Outcome) => perSecond(of) * seconds,
            },
            {
              ...{ quantity: 'rate of turning away', unit: '/h', sharp: 0.01 },
              expected: (arrivals - expected.entering) * (3600 / seconds),
              of: ({ counts, measures }: Outcome) =>
                (counts.turnedAway / counts.good) * measures.throughput_per_h!,
            },
          ]),
    ],
  });
}

/** Chances of numbers in the system, from looks `every` unit of time. */
function chances(
  { id, what, source, queue }: Queue,
  every: number,
  asked: readonly {
    readonly quantity: string;
    readonly sharp: number;
    readonly of: (p: readonly number[]) => number;
  }[],
): Case {
  const { p } = theory(queue);
  const { unit, most, arrivals } = queue;
  return caseOf<number[]>({
    ...{ id: `${id} chances`, what: `${what}; ${LOOKS}`, source },
    ...(most !== undefined && { option: LOST }),
    length: (ARRIVALS * unit.seconds) / arrivals,
    scenario: markovText(queue, 200),
    see: levels(every * unit.seconds),
    values: asked.map((value) => ({ ...value, expected: value.of(p) })),
  });
}

const empty = (sharp = 0.01) => ({
  quantity: 'chance of none',
  sharp,
  of: (p: readonly number[]) => p[0] ?? 0,
});
const atLeast = (c: number, quantity: string, sharp = 0.01) => ({
  quantity,
  sharp,
  of: (p: readonly number[]) => p.slice(c).reduce((sum, chance) => sum + chance, 0),
});
/** Poisson arrivals see time averages (Wolff 1982), so the chance that all are busy is that of a wait. */
const wait = (c: number) => atLeast(c, 'chance of a wait');

const q02 = {
  ...{ id: 'Q02', what: 'M/M/2, 2 arrivals /h, 3 services /h', source: HILLIER },
  queue: { arrivals: 2, services: 3, servers: 2, unit: HOUR },
};
const q03 = {
  ...{ id: 'Q03', what: 'M/M/3, 6 arrivals /h, services of 20 min' },
  source: `${GROSS}, eye-clinic example (citation from memory)`,
  queue: { arrivals: 6, services: 3, servers: 3, unit: HOUR },
};
const q06 = {
  ...{ id: 'Q06', what: 'M/M/1 with at most 5 in the system, 4 arrivals /h, 6 services /h' },
  source: `${TAHA}, finite car-wash example (citation from memory)`,
  queue: { arrivals: 4, services: 6, servers: 1, most: 5, unit: HOUR },
};
const q07 = {
  ...{ id: 'Q07', what: 'M/M/3 with at most 7 in the system, 1 arrival /min, services of 6 min' },
  source: `${GROSS}, emission-inspection example (citation from memory)`,
  queue: { arrivals: 1, services: 1 / 6, servers: 3, most: 7, unit: MINUTE },
};
const q12 = {
  ...{
    id: 'Q12',
    what: 'M/M/5 at 4 erlangs (Erlang C); service of 1 s',
    source: 'A. K. Erlang (1917); standard delay tables',
  },
  queue: { arrivals: 4, services: 1, servers: 5, unit: SECOND },
};

/** Pollaczek and Khinchine: the mean wait of M/G/1 at load `rho` and mean service 1. */
const pollaczekKhinchine = (rho: number, scv: number) => (rho * (1 + scv)) / (2 * (1 - rho));

function general(scv: number): Case {
  const service: Keys | string = scv === 0 ? s(1) : gamma(1, scv);
  return caseOf<Outcome>({
    id: `Q05 scv=${scv}`,
    what: `M/G/1 at load 0.8, service of 1 s with a squared coefficient of variation of ${scv}`,
    source: 'F. Pollaczek (1930), A. Y. Khinchine (1932); any queueing text',
    length: 500_000 * Math.max(1, scv),
    scenario: queueText(exponential(1 / 0.8), { cycle: service }, 2000),
    see: outcome,
    values: [
      {
        ...{ quantity: 'time waiting', unit: 's', expected: pollaczekKhinchine(0.8, scv), sharp: 0.02 },
        of: (of) => leadTime(of) - working('server')(of) / perSecond(of),
      },
    ],
  });
}

/** M/D/1: 4 arrivals an hour, 10 min of service. */
const q04 = (() => {
  const rho = 4 / 6;
  const Wq = pollaczekKhinchine(rho, 0) / 6;
  return caseOf<Outcome>({
    ...{ id: 'Q04', what: 'M/D/1, 4 arrivals /h, service of 10 min' },
    source: `${TAHA}, car-wash example (citation from memory); Pollaczek-Khinchine`,
    length: ARRIVALS * 900,
    scenario: queueText(exponential(900), { cycle: s(600) }, 200 * 3600),
    see: outcome,
    values: numbersAndTimes({ L: 4 * (Wq + 1 / 6), Lq: 4 * Wq, W: Wq + 1 / 6, Wq }, 1, HOUR),
  });
})();

/** Tails of the time in system and of the wait: e^-(mu - lambda) t, and rho times that. */
const q14 = caseOf({
  ...{ id: 'Q14', what: 'M/M/1, 2 arrivals /h, 3 services /h: chances of long stays', source: HILLIER },
  length: (ARRIVALS * 3600) / 2,
  scenario: markovText({ arrivals: 2, services: 3, servers: 1, unit: HOUR }, 200),
  see: stays,
  values: [
    {
      quantity: 'chance of more than 1 h in system',
      expected: Math.exp(-1),
      of: ({ stayed }) => stayed.filter((stay) => stay > 3600).length / stayed.length,
    },
    {
      quantity: 'chance of more than 1 h of waiting',
      expected: (2 / 3) * Math.exp(-1),
      of: ({ waited }) => waited.filter((wait) => wait > 3600).length / waited.length,
    },
    {
      ...{ quantity: 'median time in system', unit: 'h', expected: Math.LN2 },
      of: ({ stayed }) => medianSorted([...stayed].sort((a, b) => a - b)) / 3600,
    },
  ],
});

/**
 * Variance of the time average of the number in M/M/1 over a window of T, times T: for long windows
 * 2 rho (1 + rho)/(1 - rho)^4. Each run gives the mean over its windows of the squared distance from the exact mean.
 * A window is some 300 relaxation times 1/(1 - sqrt(rho))^2, so what its finite length takes off is an order below
 * the spread of the runs.
 */
function asymptoticVariance(rho: number, window: number, windows: number): Case {
  const mean = rho / (1 - rho);
  return caseOf<number[]>({
    id: `Q15 rho=${rho}`,
    what: `M/M/1 at load ${rho}, service of 1 s: T x variance of the mean number in system over T = ${window} s`,
    source: 'W. Whitt (1989), Management Science 35, 1341-1366 (citation from memory)',
    length: window * windows,
    scenario: markovText({ arrivals: rho, services: 1, servers: 1, unit: SECOND }, 0),
    see: windowMeans(window),
    values: [
      {
        ...{ quantity: 'asymptotic variance', unit: 's', sharp: 0.12 },
        expected: (2 * rho * (1 + rho)) / (1 - rho) ** 4,
        of: (means) => (window * means.reduce((sum, it) => sum + (it - mean) ** 2, 0)) / means.length,
      },
    ],
  });
}

/** Q01 to Q07, Q12, Q14, Q15: a single queue. */
export const QUEUES: readonly Case[] = [
  means({
    ...{ id: 'Q01', what: 'M/M/1, 2 arrivals /h, 3 services /h', source: HILLIER },
    queue: { arrivals: 2, services: 3, servers: 1, unit: HOUR },
  }),
  means(q02),
  chances(q02, 0.5, [empty(), wait(2)]),
  means(q03),
  chances(q03, 0.5, [empty()]),
  q04,
  ...[0, 0.25, 0.5, 1, 2].map(general),
  means(q06),
  chances(q06, 0.25, [empty(), atLeast(5, 'chance of a full system')]),
  means(q07),
  chances(q07, 3, [empty(0.1)]),
  means({ ...q12, sharp: 0.02 }),
  chances(q12, 0.5, [wait(5)]),
  q14,
  asymptoticVariance(0.5, 4000, 500),
  asymptoticVariance(0.8, 30_000, 100),
];
