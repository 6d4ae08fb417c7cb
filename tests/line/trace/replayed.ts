import { expect } from 'vitest';
import type { Outcome } from '../../../src/line/outcome.ts';
import { STATES } from '../../../src/line/state.ts';
import type { PartEvent } from '../../../src/line/trace/part-events.ts';
import type { OverTime } from '../../../src/line/trace/steps.ts';
import type { Trace } from '../../../src/line/trace/trace.ts';

/** Seconds between two times for which it had values that `counts` says yes to. */
function secondsOf<Value>(
  { at, value }: OverTime<Value>,
  from: number,
  to: number,
  counts: (value: Value) => boolean,
): number {
  let sum = 0;
  for (const [i, begin] of at.entries())
    if (counts(value[i]!)) sum += Math.max(0, Math.min(to, at[i + 1] ?? to) - Math.max(from, begin));
  return sum;
}

/** Where a part stands after each of its events; null once it has left. */
const PLACE: Readonly<Record<PartEvent['kind'], string | null | undefined>> = {
  ...{ started: 'machine', waits: 'buffer', kept: 'kept', begins: 'machine', ends: 'done', aside: 'done' },
  ...{ good: null, scrapped: null, 'turned-away': null },
  ...{ 'on-carrier': undefined, 'off-carrier': undefined },
  ...{ passes: undefined, read: undefined, gauged: undefined, tried: undefined },
};

/** Follows each part through its events; how many are in front of each station in the end. */
function walk({ events, parts }: Trace): Map<string, number> {
  const where = new Map<number, { place: string; station: string } | null>();
  let last = 0;
  for (const { kind, part, station, at } of events) {
    expect(at).toBeGreaterThanOrEqual(last);
    last = at;
    const before = where.get(part);
    if (kind === 'started') expect(before).toBeUndefined();
    // Whoever left does nothing any more, and nobody does anything before being started.
    else expect(before).toBeTruthy();
    if (kind === 'ends') expect(before).toEqual({ place: 'machine', station });
    const place = PLACE[kind];
    if (place === undefined) continue;
    where.set(part, place === null ? null : { place, station });
  }
  for (const { number, left } of parts) expect(where.get(number) === null).toBe(left !== null);
  const waiting = new Map<string, number>();
  for (const at of where.values())
    if (at?.place === 'buffer') waiting.set(at.station, (waiting.get(at.station) ?? 0) + 1);
  return waiting;
}

/** Compares what a trace tells with what the line itself counted, by ways of its own. */
export function expectAgreement(trace: Trace, outcome: Outcome): void {
  const { warmUp, end, stations, stocks, events, parts } = trace;
  const window = end - warmUp;
  const waiting = walk(trace);
  for (const { name, machines, buffer } of stations) {
    for (const state of STATES) {
      const own = machines.map(({ states }) => secondsOf(states, warmUp, end, (it) => it === state));
      const share = own.reduce((sum, seconds) => sum + seconds, 0) / machines.length / window;
      expect(share, `${name} ${state}`).toBeCloseTo(outcome.stateShares[name]![state], 9);
    }
    if (buffer === null) continue;
    expect(buffer.level.value.at(-1), name).toBe(waiting.get(name) ?? 0);
    for (const level of buffer.level.value) {
      expect(level).toBeGreaterThanOrEqual(0);
      expect(level).toBeLessThanOrEqual(Math.max(1, buffer.places));
    }
  }
  for (const { name, level } of stocks)
    if (level !== null)
      expect(secondsOf(level, warmUp, end, (pieces) => pieces === 0) / window, name).toBeCloseTo(
        outcome.stockOutShares[name]!,
        9,
      );
  expectSameCauses(trace, outcome);
  expectSameCrews(trace, outcome);
  expectSameDemand(trace, outcome);
  expectCarried(trace);
  const counted = (at: number) => (warmUp === 0 ? at >= 0 : at > warmUp);
  const count = (which: (event: PartEvent) => boolean) =>
    events.filter((event) => counted(event.at) && which(event)).length;
  const tried = (result: string) => count((event) => event.kind === 'tried' && event.result === result);
  expect({
    ...{ good: count(({ kind }) => kind === 'good'), scrapped: count(({ kind }) => kind === 'scrapped') },
    turnedAway: count(({ kind }) => kind === 'turned-away'),
    started: parts.filter(({ started }) => counted(started)).length,
    ...{ tight: tried('tight'), loose: tried('loose'), forced: tried('pressed'), damaged: tried('spoilt') },
    unread: count((event) => event.kind === 'read' && event.how !== 'read'),
    reMarked: count((event) => event.kind === 'read' && event.sent),
    setAside: count(({ kind }) => kind === 'aside'),
  }).toEqual({
    ...pick(outcome.counts, ['good', 'scrapped', 'turnedAway', 'started', 'tight', 'loose', 'forced']),
    ...pick(outcome.counts, ['damaged', 'unread', 'reMarked', 'setAside']),
  });
}

/** Crews are busy while one of them is on the way or at work, and nobody is at two machines at once. */
function expectSameCrews({ crews, warmUp, end }: Trace, { crewBusyShares, did }: Outcome): void {
  for (const { name, number, jobs } of crews) {
    const until = (left: number | null) => left ?? end;
    const busy = jobs.reduce(
      (sum, { sent, left }) => sum + Math.max(0, Math.min(end, until(left)) - Math.max(warmUp, sent)),
      0,
    );
    const called = 3600 * (did?.[`called_${name}_h`] ?? 0);
    expect(busy / (number * (end - warmUp) + called), name).toBeCloseTo(crewBusyShares[name]!, 9);
    const free = new Map<number, number>();
    for (const { member, called, sent, came, left } of jobs) {
      expect(sent).toBeGreaterThanOrEqual(Math.max(called, free.get(member) ?? 0));
      expect(until(left)).toBeGreaterThanOrEqual(Math.min(came, end));
      free.set(member, until(left));
    }
  }
}

/** Finished goods and orders, by the measures of the run; each part that an order got had left as good. */
function expectSameDemand({ demand, parts, warmUp, end }: Trace, { measures, totals }: Outcome): void {
  if (demand === null) return;
  const { level, orders, handed } = demand;
  const held = level.at.reduce(
    (sum, begin, i) =>
      sum + level.value[i]! * Math.max(0, (level.at[i + 1] ?? end) - Math.max(warmUp, begin)),
    0,
  );
  expect(held / (end - warmUp)).toBeCloseTo(measures.finished_goods_parts!, 9);
  const counted = orders.filter(({ came }) => (warmUp === 0 ? came >= 0 : came > warmUp));
  const atOnce = counted.filter(({ came, served }) => served === came).length;
  const [top, bottom] = totals.order_fill_rate ?? [0, 0];
  expect(counted.length).toBe(bottom);
  expect(atOnce).toBeGreaterThanOrEqual(top);
  const goods = parts.filter(({ left }) => left?.as === 'good');
  const byLeaving = goods.sort((one, other) => one.left!.at - other.left!.at || 0);
  expect(handed.map(({ at }) => at)).toEqual(handed.map(({ order }) => orders[order - 1]!.served));
  for (const [i, { part, at }] of handed.entries()) {
    expect(parts[part - 1]!.left?.as).toBe('good');
    expect(at).toBeGreaterThanOrEqual(parts[part - 1]!.left!.at);
    expect(parts[part - 1]!.left!.at).toBe(byLeaving[i]!.left!.at);
  }
}

/** Nothing is on two carriers at once, and what has left is on none. */
function expectCarried({ events, parts }: Trace): void {
  const on = new Map<string, number>();
  for (const event of events) {
    if (event.kind !== 'on-carrier' && event.kind !== 'off-carrier') continue;
    const key = `${event.part} ${event.carriers}`;
    expect(on.get(key) ?? 0).toBe(event.kind === 'on-carrier' ? 0 : 1);
    on.set(key, event.kind === 'on-carrier' ? 1 : 0);
  }
  for (const [key, carried] of on)
    if (parts[Number.parseInt(key, 10) - 1]!.left !== null) expect(carried, key).toBe(0);
}

/** How many parts were scrapped at each station and for each cause, by the trace and by the line's own counts. */
function expectSameCauses({ events, warmUp }: Trace, { causes, counts }: Outcome): void {
  const add = (found: Map<string, number>, station: string, cause: string, parts: number) => {
    const key = `${station}: ${cause}`;
    found.set(key, (found.get(key) ?? 0) + parts);
  };
  const traced = new Map<string, number>();
  for (const event of events)
    if (event.kind === 'scrapped' && (warmUp === 0 || event.at > warmUp))
      add(traced, event.station, event.why, 1);
  const own = new Map<string, number>();
  for (const { station, cause, parts } of causes.scrapped) add(own, station, cause, parts);
  expect(own).toEqual(traced);
  const tried = (kind: 'tight' | 'loose') => causes.misfits.reduce((sum, misfit) => sum + misfit[kind], 0);
  expect({ tight: tried('tight'), loose: tried('loose') }).toEqual(pick(counts, ['tight', 'loose']));
}

const pick = <Of extends object>(of: Of, keys: readonly (keyof Of)[]) =>
  Object.fromEntries(keys.map((key) => [key, of[key]]));
