import { expect } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import type { Line } from '../../src/line/line.ts';
import type { Machine } from '../../src/line/machine.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { StandstillError } from '../../src/line/standstill.ts';
import { STARVED } from '../../src/line/state.ts';
import { reMarkOf } from '../../src/scenario/re-mark.ts';
import { routesOf } from '../../src/scenario/routes.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { gathers } from '../../src/scenario/stations.ts';

/** The outcome, or null where the line came to a standstill, which only one with a circle of ways or with batches on carriers may. */
export function outcomeOf(scenario: Scenario, seed: number, policy = 'carry on'): Outcome | null {
  try {
    return simulate(scenario, policy, seed);
  } catch (error) {
    if (!(error instanceof StandstillError)) throw error;
    const back = scenario.stations.some(
      (spec, i) =>
        i > 0 &&
        routesOf(spec).some((to) => scenario.stations.slice(0, i).some(({ name }) => name === to)) &&
        spec.does !== 'rework',
    );
    const lying = scenario.carriers.length > 0 && scenario.stations.some(gathers);
    const anew = scenario.stations.some((spec) => reMarkOf(spec));
    expect(
      back || lying || anew,
      'only a circle of limited buffers, or carriers in batches, stand still',
    ).toBe(true);
    return null;
  }
}

export function expectShares(outcome: Outcome): void {
  for (const shares of Object.values(outcome.stateShares)) {
    const each = Object.values(shares);
    expect(each.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    for (const share of each) expect(share).toBeGreaterThanOrEqual(0);
  }
  for (const share of [...Object.values(outcome.stockOutShares), ...Object.values(outcome.crewBusyShares)]) {
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1 + 1e-12);
  }
  const { counts, measures } = outcome;
  expect(counts.firstFits).toBeLessThanOrEqual(counts.firstAttempts);
  expect(measures.on_time_rate ?? 0).toBeLessThanOrEqual(1);
}

/** Machines that wait although what they wait for is there: the line forgot to tell them. */
export function forgotten(line: Line, scenario: Scenario): string[] {
  const waits = (machine: Machine, doesNothing: boolean): boolean => {
    if (machine.state === STARVED) {
      const there = machine.inbox === null || machine.inbox.count > 0;
      return there && machine.operation.ready(machine);
    }
    if (machine.blockedAt === null || (doesNothing && !machine.up)) return false;
    // The run is over, so that it may be tried.
    return machine.blockedAt.accept(machine.blockedRow);
  };
  return scenario.stations.flatMap(({ name, whileDown }) =>
    line.stations
      .get(name)!
      .machines.filter((machine) => waits(machine, whileDown === 'nothing'))
      .map((machine) => machine.name),
  );
}
