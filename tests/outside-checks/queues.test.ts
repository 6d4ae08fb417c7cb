import { describe, it } from 'vitest';
import { expectMean, perSecond, runsOf, scenarioOf } from './by-simulation.ts';

/**
 * A station that works on an unlimited stock for exponential times and is never blocked sends parts on as a Poisson
 * process, so it stands for the arrivals. Exactly one part is always inside it, which work in progress and lead time
 * count and queueing theory does not: take off 1 part, and the mean time between arrivals.
 */
function queue(service: string, between: number, warmUp: string, length: string) {
  return scenarioOf(
    warmUp,
    length,
    `
stock:
  blank: { unlimited: true }
stations:
  arrivals:
    does: work
    takes: blank
    cycle: { distribution: exponential, mean: ${between} s }
    to: server
  server:
    does: work
    buffer: unlimited
    cycle: ${service}
    to: good`,
  );
}

describe('single-server queues by simulation', { timeout: 60_000 }, () => {
  // Q01: M/M/1, 2 arrivals an hour, 3 services an hour: L = rho/(1 - rho) = 2, W = 1/(mu - lambda) = 1 h. Hillier &
  // Lieberman, Introduction to Operations Research, County Hospital example (example from memory, figures
  // recomputed). An hour of the example is 6 s here. By Whitt (1989), Management Science 35, the time average of L
  // over T services has variance 180/T: 30 runs of 60 000 services give a half width of 1 %.
  it('holds 2 in an M/M/1 queue at 2 arrivals and 3 services an hour, and keeps each for an hour', () => {
    const outcomes = runsOf(queue('{ distribution: exponential, mean: 2 s }', 3, '1 h', '36 h'));
    expectMean(
      outcomes.map(({ measures }) => measures.work_in_progress_parts! - 1),
      2,
      0.015,
    );
    expectMean(
      outcomes.map(({ measures }) => (measures.lead_time_s! - 3) / 6),
      1,
      0.015,
    );
    // The same hour by way of Little's law, from the number and the rate alone.
    expectMean(
      outcomes.map((o) => (o.measures.work_in_progress_parts! - 1) / perSecond(o) / 6),
      1,
      0.015,
    );
  });

  // Q04: M/D/1, 4 arrivals an hour, 10 min of service: L = 4/3, Lq = 2/3, W = 1/3 h. Taha, Operations Research: An
  // Introduction, car-wash example (example from memory, figures recomputed); Pollaczek (1930), Khinchine (1932).
  it('halves the queue when the service time is constant, M/D/1', () => {
    const outcomes = runsOf(queue('10 s', 15, '1 h', '60 h'));
    expectMean(
      outcomes.map(({ measures }) => measures.work_in_progress_parts! - 1),
      4 / 3,
    );
    expectMean(
      outcomes.map(({ measures }) => (measures.lead_time_s! - 15) / 60),
      1 / 3,
    );
  });

  // Q05: Pollaczek-Khinchine at rho = 0.5: Lq = rho^2 (1 + scv) / (2 (1 - rho)), for squared coefficients of
  // variation 0.25 and 2 through the gamma law.
  it.each([
    [0.25, 0.3125],
    [2, 0.75],
  ])('queues by the spread of service, squared coefficient of variation %d', (scv, queued) => {
    const cv = Math.sqrt(scv) * 100;
    const outcomes = runsOf(
      queue(`{ distribution: gamma, mean: 5 s, cv: ${cv} % }`, 10, '1 h', scv > 1 ? '150 h' : '50 h'),
    );
    expectMean(
      outcomes.map(({ measures }) => measures.work_in_progress_parts! - 1),
      0.5 + queued,
      0.015,
    );
  });
});
