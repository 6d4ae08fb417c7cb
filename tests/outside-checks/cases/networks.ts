import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { theory } from './markov-queue.ts';
import { exponential, percent, s, scenarioText } from './scenario-text.ts';
import { crowds, inProgress, leadTime, outcome, perSecond, working } from './see.ts';
import { HOUR } from './unit.ts';

const JACKSON = 'J. R. Jackson (1957), Operations Research 5, 518-521';

/** Poisson arrivals at rate `rate` an hour. */
const arrivals = (rate: number, to: string) => ({ does: 'arrive', every: exponential(3600 / rate), to });
const server = (rate: number, to: unknown, servers = 1) => ({
  ...{ does: 'work', buffer: 'unlimited', machines: servers, cycle: exponential(3600 / rate), to },
});
const byShare = (shares: Readonly<Record<string, number>>) => ({
  by: 'share',
  routes: Object.fromEntries(Object.entries(shares).map(([to, share]) => [to, percent(share)])),
});

/** Number in the system and time in it, over all stations. */
const whole = (L: number, entering: number) => [
  { quantity: 'number in system', expected: L, of: inProgress },
  {
    ...{ quantity: 'time in system', unit: 'h', expected: L / entering },
    of: (of: Outcome) => leadTime(of) / 3600,
  },
];

/** Q08: arrivals, servers and routing of the three facilities; 10 services an hour each. */
const ENTERING = [1, 4, 3];
const SERVERS = [1, 2, 1];
const ROUTING = [
  [0, 0.6, 0.3],
  [0.1, 0, 0.3],
  [0.4, 0.4, 0],
];
const SERVICES = 10;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The traffic equations, by putting the rates in until they no longer move. */
function traffic(): number[] {
  let rates = ENTERING;
  for (let round = 0; round < 500; round++) {
    rates = ENTERING.map((rate, to) => rate + sum(rates.map((from, i) => from * ROUTING[i]![to]!)));
  }
  return rates;
}

function facility(i: number) {
  const shares = ROUTING[i]!.map((share, to) => [`f${to + 1}`, share] as const).filter(
    ([, share]) => share > 0,
  );
  const leaving = Math.round(100 * (1 - sum(ROUTING[i]!))) / 100;
  return server(SERVICES, byShare({ ...Object.fromEntries(shares), good: leaving }), SERVERS[i]!);
}

function jackson(): Case[] {
  const rates = traffic();
  // Each facility is an M/M/c queue of its own.
  const numbers = rates.map(
    (rate, i) => theory({ arrivals: rate, services: SERVICES, servers: SERVERS[i]!, unit: HOUR }).L,
  );
  const common = {
    what: 'open Jackson network of 3 facilities with feedback; 1, 4 and 3 arrivals /h',
    source: `Hillier & Lieberman, Introduction to Operations Research, Jackson-network example (citation from memory); ${JACKSON}`,
    length: 40_000 * 3600,
    scenario: scenarioText(100 * 3600, {
      stations: Object.fromEntries([
        ...ENTERING.map((rate, i) => [`a${i + 1}`, arrivals(rate, `f${i + 1}`)]),
        ...SERVERS.map((_, i) => [`f${i + 1}`, facility(i)]),
      ]),
    }),
  };
  return [
    caseOf<Outcome>({
      ...{ id: 'Q08', ...common, see: outcome },
      values: [
        ...rates.map((rate, i) => ({
          ...{ quantity: `visits to facility ${i + 1}`, unit: '/h', expected: rate },
          of: (of: Outcome) => working(`f${i + 1}`)(of) * SERVERS[i]! * SERVICES,
        })),
        ...whole(sum(numbers), sum(ENTERING)),
      ],
    }),
    caseOf<number[]>({
      ...{ id: 'Q08 facilities', ...common, what: `${common.what}; by looks at regular times` },
      see: crowds(600, ['f1', 'f2', 'f3']),
      values: numbers.map((expected, i) => ({
        ...{ quantity: `number at facility ${i + 1}`, expected, sharp: 0.02 },
        of: (seen: number[]) => seen[i]!,
      })),
    }),
  ];
}

/** A part comes back with chance p: visits 1/(1 - p), so the load is lambda/(mu (1 - p)), and L as in M/M/1. */
const q09 = (() => {
  const again = 0.2;
  const visits = 1 / (1 - again);
  const rho = (3 * visits) / 5;
  return caseOf<Outcome>({
    id: 'Q09',
    what: 'M/M/1 with rework of one part in five at the same station, 3 arrivals /h, 5 services /h',
    source: JACKSON,
    option: 'a station does not route to itself: the way back leads through a station that takes no time',
    length: 100_000 * 3600,
    scenario: scenarioText(200 * 3600, {
      stations: {
        arrivals: arrivals(3, 'server'),
        server: server(5, byShare({ again, good: 1 - again })),
        again: { does: 'work', buffer: 'unlimited', cycle: s(0), to: 'server' },
      },
    }),
    see: outcome,
    values: [
      {
        ...{ quantity: 'visits of a part', expected: visits },
        of: (of) => (working('server')(of) * 5) / 3600 / perSecond(of),
      },
      { quantity: 'load', expected: rho, of: working('server') },
      ...whole(rho / (1 - rho), 3),
    ],
  });
})();

/** Three M/M/1 queues one behind the other: what leaves each is Poisson again. */
const q13 = (() => {
  const services = [5, 4, 6];
  const L = services.reduce((sum, rate) => sum + 3 / (rate - 3), 0);
  return caseOf<Outcome>({
    id: 'Q13',
    what: 'three M/M/1 queues in tandem, 3 arrivals /h; 5, 4 and 6 services /h',
    source: `P. J. Burke (1956), Operations Research 4, 699-704; ${JACKSON}`,
    length: 100_000 * 3600,
    scenario: scenarioText(200 * 3600, {
      stations: {
        arrivals: arrivals(3, 's1'),
        ...Object.fromEntries(
          services.map((rate, i) => [`s${i + 1}`, server(rate, i < 2 ? `s${i + 2}` : 'good')]),
        ),
      },
    }),
    see: outcome,
    values: whole(L, 3),
  });
})();

/** Q08, Q09, Q13: several queues that feed each other. */
export const NETWORKS: readonly Case[] = [...jackson(), q09, q13];
