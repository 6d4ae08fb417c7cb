import { prepare, simulate } from '../../../src/experiment/simulate.ts';
import type { Line } from '../../../src/line/line.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import { WORKING } from '../../../src/line/state.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

const POLICY = 'carry on';

/** The outcome of a run. */
export const outcome = (scenario: Scenario, seed: number): Outcome => simulate(scenario, POLICY, seed);

/** Throughput in parts per second. */
export const perSecond = ({ measures }: Outcome): number => measures.throughput_per_h! / 3600;
export const inProgress = ({ measures }: Outcome): number => measures.work_in_progress_parts!;
/** Mean time in the line of good parts, s. */
export const leadTime = ({ measures }: Outcome): number => measures.lead_time_s!;
/** Share of the time that the machines of a station work, which for one of c machines is the mean number at work / c. */
export const working = (station: string) => (of: Outcome) => of.stateShares[station]!.working;

/** Parts that station `s1` has finished and `s2` has not: all but the one that the first, which never starves, works on. */
export function partsBetween(of: Outcome): number {
  return inProgress(of) - (1 - of.stateShares.s1!.blocked);
}

/** A line that has warmed up, and when its run ends, s. */
function warm(scenario: Scenario, seed: number): { line: Line; end: number } {
  const line = prepare(scenario, POLICY, seed);
  line.calendar.run(scenario.run.warmUp);
  return { line, end: scenario.run.warmUp + scenario.run.length };
}

/** Looks at the line every so often, s, and lets `look` keep what it sees. */
function lookAt(scenario: Scenario, seed: number, every: number, look: (line: Line) => void): void {
  const { line, end } = warm(scenario, seed);
  for (let at = line.calendar.now + every; at <= end; at += every) {
    line.calendar.run(at);
    look(line);
  }
}

/** A number that is counted at regular looks: at index n the share of looks that found n. */
export const levels =
  (every: number, count = ({ tally }: Line): number => tally.inLine) =>
  (scenario: Scenario, seed: number): number[] => {
    const found: number[] = [];
    let looks = 0;
    lookAt(scenario, seed, every, (line) => {
      const level = count(line);
      while (found.length <= level) found.push(0);
      found[level]!++;
      looks++;
    });
    return found.map((times) => times / looks);
  };

/** The mean number of parts at each of these stations and in front of it, from regular looks. */
export const crowds =
  (every: number, stations: readonly string[]) =>
  (scenario: Scenario, seed: number): number[] => {
    const sums = stations.map(() => 0);
    let looks = 0;
    lookAt(scenario, seed, every, (line) => {
      for (const [i, station] of stations.entries()) sums[i]! += line.stations.get(station)!.crowd;
      looks++;
    });
    return sums.map((sum) => sum / looks);
  };

/** Stations of one machine that do not work. */
export const idle = (line: Line): number =>
  [...line.stations.values()].filter(({ machines }) => machines[0]!.state !== WORKING).length;

/** The mean number of parts in the line over each of consecutive windows, s. */
export const windowMeans =
  (window: number) =>
  (scenario: Scenario, seed: number): number[] => {
    const means: number[] = [];
    let before = 0;
    // The first window is not counted: it only tells where the second begins.
    let first = true;
    lookAt(scenario, seed, window, ({ tally, calendar }) => {
      const { partSeconds } = tally.copy(calendar.now);
      if (!first) means.push((partSeconds - before) / window);
      before = partSeconds;
      first = false;
    });
    return means;
  };

/** Calls `left` for each good part that leaves after the warm-up with the time it stayed and the clock, both s. */
function watchLeaving(scenario: Scenario, seed: number, left: (stayed: number, now: number) => void): void {
  const { line, end } = warm(scenario, seed);
  line.good.leaving.push((_row, stayed, now) => left(stayed, now));
  line.calendar.run(end);
}

/** Seconds between good parts. */
export function intervals(scenario: Scenario, seed: number): number[] {
  const found: number[] = [];
  let before = Number.NaN;
  watchLeaving(scenario, seed, (_stayed, now) => {
    if (!Number.isNaN(before)) found.push(now - before);
    before = now;
  });
  return found;
}

/** Times that parts spent in a queue with a single server. */
export interface Stays {
  /** Waiting and service, s. */
  readonly stayed: readonly number[];
  readonly waited: readonly number[];
}

/**
 * Stays in a queue with a single server, first come first served. The service of a part begins when it comes, or when
 * the one before it leaves, whichever is later; so its wait follows from these two times.
 */
export function stays(scenario: Scenario, seed: number): Stays {
  const stayed: number[] = [];
  const waited: number[] = [];
  let before = Number.NaN;
  watchLeaving(scenario, seed, (stay, now) => {
    if (!Number.isNaN(before)) {
      stayed.push(stay);
      waited.push(Math.max(0, before - (now - stay)));
    }
    before = now;
  });
  return { stayed, waited };
}
