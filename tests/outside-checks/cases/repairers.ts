import type { Outcome } from '../../../src/line/outcome.ts';
import { birthDeath, meanOver } from './birth-death.ts';
import { type Case, caseOf } from './case.ts';
import { BLANKS, exponential, s, scenarioText } from './scenario-text.ts';
import { idle, levels, outcome } from './see.ts';
import { HOUR, SECOND, type Unit } from './unit.ts';

interface Interference {
  readonly machines: number;
  readonly repairers: number;
  /** Mean time to failure and to repair, in `unit`. */
  readonly life: number;
  readonly repair: number;
  readonly unit: Unit;
}

/** Machines that fail as they work and share repairers: numbers down under the exponential laws. */
const down = ({ machines, repairers, life, repair }: Interference) =>
  birthDeath(
    (n) => (machines - n) / life,
    (n) => Math.min(n, repairers) / repair,
    machines,
  );

/** Each machine is a station that never lacks work and is never blocked, so that it works whenever it is up. */
function interferenceText({ machines, repairers, life, repair, unit }: Interference) {
  const fails = {
    every: exponential(life * unit.seconds),
    counted: 'working',
    repair: exponential(repair * unit.seconds),
    cycle: 'resumes',
    crew: 'repairer',
  };
  const machine = {
    ...{ does: 'work', takes: 'blank', cycle: s(life * unit.seconds), to: 'good', breakdowns: { fails } },
  };
  return scenarioText(20 * life * unit.seconds, {
    stock: BLANKS,
    stations: Object.fromEntries(Array.from({ length: machines }, (_, i) => [`m${i + 1}`, machine])),
    crew: { repairer: { number: repairers } },
  });
}

/** The mean number of machines in a state. */
const inState = (of: Outcome, state: 'working' | 'down' | 'awaiting_technician') =>
  Object.values(of.stateShares).reduce((sum, shares) => sum + shares[state], 0);

function q10(repairers: number): Case {
  const shop = { machines: 22, repairers, life: 2, repair: 0.2, unit: HOUR };
  return caseOf<Outcome>({
    id: `Q10 R=${repairers}`,
    what: `22 machines that fail every 2 h of work and take 12 min to repair, ${repairers} repairer${repairers > 1 ? 's' : ''}`,
    source:
      'Taha, Operations Research: An Introduction, queueing chapter, Toolco example (citation from memory)',
    length: 10_000 * 3600,
    scenario: interferenceText(shop),
    see: outcome,
    values: [
      {
        quantity: 'availability',
        expected: 1 - meanOver(down(shop), (n) => n) / 22,
        of: (of) => inState(of, 'working') / 22,
      },
    ],
  });
}

function q11(): Case[] {
  const shop = { machines: 5, repairers: 2, life: 30, repair: 3, unit: SECOND };
  const p = down(shop);
  const L = meanOver(p, (n) => n);
  const failures = (5 - L) / 30;
  const waiting = meanOver(p, (n) => Math.max(0, n - 2));
  const common = {
    what: '5 machines that fail every 30 s of work and take 3 s to repair, 2 repairers',
    source:
      'Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, five-robot example (citation from memory)',
    length: 1_500_000,
    scenario: interferenceText(shop),
  };
  return [
    caseOf<Outcome>({
      ...{ id: 'Q11', ...common, see: outcome },
      values: [
        {
          ...{ quantity: 'number down', expected: L },
          of: (of) => inState(of, 'down') + inState(of, 'awaiting_technician'),
        },
        { quantity: 'number up', expected: 5 - L, of: (of) => inState(of, 'working') },
        {
          ...{ quantity: 'repairs', unit: '/s', expected: failures },
          of: (of) => inState(of, 'down') / 3,
        },
        {
          ...{ quantity: 'wait for a repairer', unit: 's', expected: waiting / failures, sharp: 0.02 },
          of: (of) => inState(of, 'awaiting_technician') / (inState(of, 'working') / 30),
        },
        {
          ...{ quantity: 'idle share of a repairer', expected: 1 - (failures * 3) / 2 },
          of: ({ crewBusyShares }) => 1 - crewBusyShares.repairer!,
        },
      ],
    }),
    caseOf<number[]>({
      ...{ id: 'Q11 chances', ...common, what: `${common.what}; by looks at regular times` },
      see: levels(10, idle),
      values: [{ quantity: 'chance of none down', expected: p[0]!, of: (seen) => seen[0]! }],
    }),
  ];
}

/** Q10, Q11: machines that share repairers (machine interference). */
export const REPAIRERS: readonly Case[] = [...[1, 2, 3, 4].map(q10), ...q11()];
