import { disturb } from '../disturbance/disturb.ts';
import { buildLine } from '../line/build/build-line.ts';
import { type Causes, causesBetween, causesNow, NO_CAUSES } from '../line/causes.ts';
import { Controls } from '../line/controls.ts';
import { COUNTS, type Count } from '../line/counts.ts';
import { runInBins } from '../line/course.ts';
import { Episodes } from '../line/episodes.ts';
import type { Line } from '../line/line.ts';
import { Looks } from '../line/looks.ts';
import { MEASURES, type MeasureKey, totalsOf } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import { selfCheck } from '../line/self-check.ts';
import { STATES, type State } from '../line/state.ts';
import type { Stock } from '../line/stock.ts';
import { stockCost, stockMeasures } from '../line/supply/stock-measures.ts';
import { StockTally } from '../line/supply/stock-tally.ts';
import { Tally } from '../line/tally.ts';
import type { Recorder } from '../line/trace/recorder.ts';
import { foreseeing, seeTruth } from '../policy/foresee.ts';
import { keeping } from '../policy/keep.ts';
import { follow } from '../policy/responses.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { capabilityOf } from '../statistics/capability.ts';
import { ReadingSums } from '../statistics/reading-sums.ts';
import { rollingOf } from './rolling.ts';

/** The counts at one moment, to be taken from those at the end. */
interface Snapshot {
  readonly tally: Tally;
  readonly seconds: ReadonlyMap<string, Float64Array>;
  readonly stocks: ReadonlyMap<string, StockTally>;
  readonly busySeconds: ReadonlyMap<string, number>;
  /** Of those who were called to help a crew, by crew. */
  readonly calledSeconds: ReadonlyMap<string, number>;
  readonly causes: Causes;
  readonly done: ReadonlyMap<string, number>;
  /** In the order of `Line.readings`. */
  readonly readings: readonly ReadingSums[];
}

/** The counts of a stock, with what is told by those who take of it. */
function countedOf({ takers }: Line, name: string, stock: Stock): StockTally {
  const counted = stock.counted();
  for (const taker of takers) if (taker.stock === name) counted.heldSeconds += taker.heldSeconds();
  return counted;
}

function snapshot(line: Line): Snapshot {
  line.demand?.settle();
  const limited = [...line.stocks].filter(([, stock]) => stock.limited);
  return {
    tally: line.tally.copy(line.calendar.now),
    seconds: new Map([...line.stations].map(([name, station]) => [name, station.seconds()])),
    stocks: new Map(limited.map(([name, stock]) => [name, countedOf(line, name, stock)])),
    busySeconds: new Map([...line.crews].map(([name, crew]) => [name, crew.busySeconds()])),
    calledSeconds: new Map([...line.crews].map(([name, crew]) => [name, crew.calledSeconds()])),
    causes: causesNow(line),
    done: new Map([...line.done].map(([name, count]) => [name, count()])),
    readings: line.readings.map(({ sums }) => sums.copy()),
  };
}

/** The counts of a run without a warm-up, in which all counts from the start. */
function fromNothing(line: Line): Snapshot {
  const readings = line.readings.map(() => new ReadingSums());
  const now = snapshot(line);
  const stocks = new Map([...now.stocks.keys()].map((name) => [name, new StockTally()]));
  return { ...now, tally: new Tally(), stocks, readings, causes: NO_CAUSES, done: new Map() };
}

const subtract = (all: ReadonlyMap<string, number>, before: ReadonlyMap<string, number>) =>
  Object.fromEntries([...all].map(([name, count]) => [name, count - (before.get(name) ?? 0)]));

/** Puts what a policy has in code to work, beside its responses. */
export type Code = (controls: Controls) => void;

/**
 * A line under a policy and with its disturbances, just started; `episodes` notes when these come and go, and `recorder`
 * writes down what happens.
 */
export function prepare(
  scenario: Scenario,
  policy: string,
  seed: number,
  episodes: Episodes | null = null,
  code?: Code,
  recorder?: Recorder,
): Line {
  const chosen = scenario.policies.find(({ name }) => name === policy);
  if (!chosen) throw new RangeError(`the scenario has no policy "${policy}"`);
  const met = foreseeing(scenario, chosen);
  const line = buildLine(keeping(met, chosen.responses), seed);
  line.episodes = episodes;
  const controls = new Controls(line);
  follow(chosen.responses, controls, recorder?.turned(chosen.responses, line.calendar));
  code?.(controls);
  seeTruth(line, met, chosen);
  disturb(line, met.disturbances);
  recorder?.follow(line, met);
  line.start();
  return line;
}

/**
 * One run. Counting covers what happens after the warm-up up to and including the end: an event at exactly the
 * end counts, one at exactly the end of the warm-up does not. Without a warm-up everything counts, the loads at
 * the start included. Parts still in the line at the end count as
 * started and in progress, not as good or scrap.
 * @param withCourse whether the outcome is to tell how the output went, too
 * @param withLook whether it is to tell what pictures show, too: true sizes and levels
 * @param recorder writes down what happens; the outcome is the same without it
 * @throws StandstillError, EndlessLoopError, SelfCheckError, RunawayResponseError, PolicyModuleFault
 */
export function simulate(
  scenario: Scenario,
  policy: string,
  seed: number,
  withCourse = false,
  code?: Code,
  recorder?: Recorder,
  withLook = false,
): Outcome {
  const { warmUp, length } = scenario.run;
  const episodes = recorder?.episodes ?? (withCourse ? new Episodes() : null);
  const line = prepare(scenario, policy, seed, episodes, code, recorder);
  if (warmUp > 0) line.calendar.run(warmUp);
  const from = warmUp > 0 ? snapshot(line) : fromNothing(line);
  const { bin, bins } = rollingOf(scenario.run);
  const looks = withLook ? new Looks(line, bin, bins) : undefined;
  const good = withCourse || looks ? runInBins(line, bin, bins, warmUp + length, looks) : null;
  line.calendar.run(warmUp + length);
  selfCheck(line);
  const made = outcome(scenario, policy, seed, line, from, snapshot(line));
  return {
    ...made,
    ...(withCourse && episodes && good && { course: { good, episodes: episodes.all } }),
    ...(looks && { look: looks.look }),
  };
}

function outcome(
  { run: { length: window }, stocks }: Scenario,
  policy: string,
  seed: number,
  line: Line,
  from: Snapshot,
  to: Snapshot,
): Outcome {
  const between = (key: keyof Omit<Tally, 'advance' | 'copy' | 'inLine'>) => to.tally[key] - from.tally[key];
  const counts = Object.fromEntries(COUNTS.map((key) => [key, between(key)])) as Record<Count, number>;
  const ofStocks = Object.fromEntries(
    stocks.flatMap((spec) => {
      const own = to.stocks.get(spec.name);
      return own ? [[spec.name, stockMeasures(spec, from.stocks.get(spec.name)!, own, window)]] : [];
    }),
  );
  const costs = Object.values(ofStocks).flatMap((own) => stockCost(own) ?? []);
  const counted = {
    ...counts,
    // Who is turned away at the entrance is no part of the line.
    started: counts.started - counts.turnedAway,
    window,
    partSeconds: between('partSeconds'),
    leadSeconds: between('leadSeconds'),
    came: line.turnsAway ? counts.started : undefined,
    ordersDue: between('ordersDue'),
    ordersOnTime: between('ordersOnTime'),
    ordersCame: between('ordersCame'),
    ordersAtOnce: between('ordersAtOnce'),
    stockCost: costs.length > 0 ? costs.reduce((sum, cost) => sum + cost, 0) : undefined,
    finishedGoodsSeconds: line.demand ? between('finishedGoodsSeconds') : undefined,
  };
  const shares = (name: string) => {
    const own = to.seconds.get(name)!;
    const before = from.seconds.get(name)!;
    return Object.fromEntries(
      STATES.map((state, i) => [state, Math.min(1, (own[i]! - before[i]!) / window)]),
    );
  };
  return {
    policy,
    seed,
    measures: Object.fromEntries(MEASURES.map(({ key, of }) => [key, of(counted) ?? null])) as Record<
      MeasureKey,
      number | null
    >,
    totals: totalsOf(counted),
    stateShares: Object.fromEntries([...line.stations.keys()].map((name) => [name, shares(name)])) as Record<
      string,
      Record<State, number>
    >,
    stockOutShares: Object.fromEntries(
      [...to.stocks].map(([name, { outSeconds }]) => [
        name,
        (outSeconds - from.stocks.get(name)!.outSeconds) / window,
      ]),
    ),
    stocks: ofStocks,
    crewBusyShares: Object.fromEntries(
      [...to.busySeconds].map(([name, seconds]) => [
        name,
        (seconds - from.busySeconds.get(name)!) /
          (line.crews.get(name)!.number * window +
            (to.calledSeconds.get(name)! - from.calledSeconds.get(name)!)),
      ]),
    ),
    capabilities: line.readings.map(({ gauge, feature }, i) => {
      const { name, aim, limits } = feature.spec;
      const found = to.readings[i]!.since(from.readings[i]!, aim);
      return { gauge, feature: name, ...found, ...capabilityOf(found, limits!) };
    }),
    counts,
    causes: causesBetween(from.causes, to.causes),
    ...(to.done.size > 0 && { did: subtract(to.done, from.done) }),
    events: line.calendar.events,
  };
}
