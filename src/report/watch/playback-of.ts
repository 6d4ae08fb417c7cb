import { STATES } from '../../line/state.ts';
import type { PartEvent } from '../../line/trace/part-events.ts';
import type { OverTime } from '../../line/trace/steps.ts';
import type { Trace, TracedCrew, TracedDemand, TracedStation, Truth } from '../../line/trace/trace.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { deltas } from './deltas.ts';
import {
  flowOrder,
  type Levels,
  type Playback,
  type PlaybackCrew,
  type PlaybackStation,
  type Span,
} from './playback.ts';
import { type Taken, taken } from './shapes.ts';

const ms = (seconds: number): number => Math.round(1000 * seconds);
const moments = (at: readonly number[]): number[] => deltas(at.map(ms));

const levels = ({ at, value }: OverTime<number>): Levels => ({ at: moments(at), value: deltas(value) });

function stationOf({ name, does, machines, buffer }: TracedStation, { stations }: Scenario): PlaybackStation {
  const spec = stations.find((station) => station.name === name)!;
  const places = buffer?.places ?? 0;
  return {
    ...{ name, does, machines: machines.length, to: spec.to.routes.map(({ to }) => to) },
    ...(spec.does === 'form' && { perSheet: spec.perSheet }),
    ...(spec.does === 'assemble' && { fits: spec.fits.map(({ hole, shaft }) => ({ hole, shaft })) }),
    names: machines.map((machine) => machine.name),
    states: machines.map(({ states: { at, value } }) => ({
      ...{ at: moments(at), value: value.map((state) => STATES.indexOf(state)) },
    })),
    buffer: buffer && {
      ...{ places: Number.isFinite(places) ? places : null, level: levels(buffer.level) },
    },
  };
}

/** Numbers things that are alike by what they say, in the order in which they first come. */
class Catalogue<Of> {
  readonly all: Of[] = [];
  private readonly numbers = new Map<string, number>();

  numberOf(one: Of): number {
    const key = JSON.stringify(one);
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.numbers.set(key, this.all.length);
    return this.all.push(one) - 1;
  }
}

const byPart = <Of extends PartEvent | Truth>(all: readonly Of[], parts: number): Of[][] => {
  const own: Of[][] = Array.from({ length: parts }, () => []);
  for (const one of all) own[one.part - 1]!.push(one);
  return own;
};

/** At the moment of which event something came about, by its place. */
const placeOf = (truth: Truth, events: readonly PartEvent[]): string => {
  const place = events.findIndex(({ at }) => at === truth.at);
  if (place < 0) throw new Error(`nothing happened to part ${truth.part} at ${truth.at} s`);
  return String(place);
};

function partsOf({ parts, events, truths }: Trace): Pick<Playback, 'courses' | 'truths' | 'parts'> {
  const courses = new Catalogue<object[]>();
  const revealed = new Catalogue<object[]>();
  const last = new Map<string, number>();
  const numbers: number[] = [];
  const put = (own: readonly Taken[]) => {
    for (const { track, number } of own) {
      numbers.push(number - (last.get(track) ?? 0));
      last.set(track, number);
    }
  };
  const after: number[] = [];
  const course: number[] = [];
  const truth: number[] = [];
  const known = byPart(truths, parts.length);
  for (const [i, own] of byPart(events, parts.length).entries()) {
    const start = ms(parts[i]!.started);
    after.push(...own.map(({ at }, k) => ms(at) - (k === 0 ? start : ms(own[k - 1]!.at))));
    const happened = own.map(({ at: _, part: __, ...event }) => taken(event));
    const true_ = known[i]!.map((one) => {
      const { at: _, part: __, ...said } = one;
      return taken({ ...said, at: placeOf(one, own) });
    });
    course.push(courses.numberOf(happened.map(({ rest }) => rest)));
    truth.push(revealed.numberOf(true_.map(({ rest }) => rest)));
    for (const one of [...happened, ...true_]) put(one.numbers);
  }
  return {
    courses: courses.all as unknown as Playback['courses'],
    truths: revealed.all as unknown as Playback['truths'],
    parts: { started: moments(parts.map(({ started }) => started)), course, truth, after, numbers },
  };
}

function spansOf({ disturbances, responses }: Trace): Span[] {
  const end = (at: number | null) => (at === null ? null : ms(at));
  return [
    ...disturbances.map(
      (it): Span => ({
        ...{ what: 'disturbance', name: it.name, begin: ms(it.begin), end: end(it.end) },
      }),
    ),
    ...responses.map(({ name, does, began, ended }): Span => {
      const called = name === null ? does : `${does} (${name})`;
      return { what: 'response', name: called, begin: ms(began), end: end(ended) };
    }),
  ];
}

function crewOf({ name, number, jobs }: TracedCrew): PlaybackCrew {
  const kinds = new Catalogue<PlaybackCrew['kinds'][number]>();
  return {
    ...{ name, number, kinds: kinds.all },
    kind: jobs.map(({ member, station, machine, job }) => kinds.numberOf([member, station, machine, job])),
    sent: moments(jobs.map(({ sent }) => sent)),
    way: jobs.map(({ sent, came }) => ms(came) - ms(sent)),
    took: jobs.map(({ came, left }) => (left === null ? null : ms(left) - ms(came))),
  };
}

const demandOf = ({ level, handed }: TracedDemand): NonNullable<Playback['demand']> => ({
  level: levels(level),
  part: deltas(handed.map(({ part }) => part)),
  order: deltas(handed.map(({ order }) => order)),
  at: moments(handed.map(({ at }) => at)),
});

/** A run as a page holds it. */
export function playbackOf(trace: Trace, scenario: Scenario): Playback {
  const { policy, seed, warmUp, end, stations, stocks, crews, demand, adjustments } = trace;
  const stationNamed = (name: string) => stations.find((station) => station.name === name)!;
  return {
    ...{ policy, seed, warmUp: ms(warmUp), end: ms(end) },
    stations: flowOrder(scenario).map((name) => stationOf(stationNamed(name), scenario)),
    stocks: stocks.map(({ name, level, orders }) => ({
      ...{ name, level: level && levels(level) },
      orders: orders.map(({ pieces, placed, came }) => ({
        ...{ pieces, placed: ms(placed), came: came && ms(came.at) },
      })),
    })),
    crews: crews.map(crewOf),
    demand: demand && demandOf(demand),
    ...partsOf(trace),
    spans: spansOf(trace),
    adjustments: adjustments.map(({ at, setting, how, to }) => {
      const amount = String(Number(to.toPrecision(4))).replace('-', '\u2212');
      const text =
        how === 'adjust'
          ? `the policy adds ${amount} to the target of ${setting}`
          : `the policy moves the target of ${setting} by ${amount}`;
      return { at: ms(at), text };
    }),
  };
}
