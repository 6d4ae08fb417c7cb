import type { Outcome } from '../../../src/line/outcome.ts';
import { birthDeath, meanOver } from './birth-death.ts';
import { exponential, type Keys, scenarioText } from './scenario-text.ts';
import { inProgress, leadTime, perSecond, working } from './see.ts';
import type { Unit } from './unit.ts';

/** Poisson arrivals, exponential service: M/M/c, or M/M/c/K where no more than `most` may be in the system. */
export interface MarkovQueue {
  /** Arrivals, and services of one server, per unit of time. */
  readonly arrivals: number;
  readonly services: number;
  readonly servers: number;
  readonly most?: number;
  readonly unit: Unit;
}

/** Beyond this no number in the system has a chance that a double can tell from none, in the queues here. */
const BEYOND = 2000;

/** What theory says of the queue, in its unit of time. */
export function theory({ arrivals, services, servers, most = BEYOND }: MarkovQueue) {
  const p = birthDeath(
    () => arrivals,
    (n) => services * Math.min(n, servers),
    most,
  );
  const entering = arrivals * (1 - (most === BEYOND ? 0 : p[most]!));
  const L = meanOver(p, (n) => n);
  const Lq = meanOver(p, (n) => Math.max(0, n - servers));
  return { p, entering, L, Lq, W: L / entering, Wq: Lq / entering };
}

/** A queue behind arrivals `between` seconds apart; with `places` for those who wait, arrivals who find none are lost. */
export function queueText(between: Keys, server: Keys, warmUp: number, places?: number) {
  return scenarioText(warmUp, {
    stations: {
      arrivals: {
        does: 'arrive',
        every: between,
        ...(places !== undefined && { 'when-full': 'lost' }),
        to: 'server',
      },
      server: { does: 'work', buffer: places ?? 'unlimited', ...server, to: 'good' },
    },
  });
}

/** The scenario of a Markov queue: in units of time, a warm-up of `warmUp`. */
export function markovText({ arrivals, services, servers, most, unit }: MarkovQueue, warmUp: number) {
  return queueText(
    exponential(unit.seconds / arrivals),
    { machines: servers, cycle: exponential(unit.seconds / services) },
    warmUp * unit.seconds,
    most === undefined ? undefined : most - servers,
  );
}

/** Numbers in the system and in the queue, and the mean time in each, from an outcome. */
export function numbersAndTimes(
  expected: { readonly L: number; readonly Lq: number; readonly W: number; readonly Wq: number },
  servers: number,
  unit: Unit,
  sharp = 0.01,
) {
  const serving = (of: Outcome) => servers * working('server')(of);
  return [
    { quantity: 'number in system', expected: expected.L, sharp, of: inProgress },
    {
      quantity: 'number waiting',
      expected: expected.Lq,
      sharp,
      of: (of: Outcome) => inProgress(of) - serving(of),
    },
    {
      quantity: 'time in system',
      unit: unit.name,
      expected: expected.W,
      sharp,
      of: (of: Outcome) => leadTime(of) / unit.seconds,
    },
    {
      quantity: 'time waiting',
      unit: unit.name,
      expected: expected.Wq,
      sharp,
      // Of the time in the system, what is not service as it was counted.
      of: (of: Outcome) => (leadTime(of) - serving(of) / perSecond(of)) / unit.seconds,
    },
  ];
}
