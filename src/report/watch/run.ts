import { STATES, type State } from '../../line/state.ts';
import type { PartEvent } from '../../line/trace/part-events.ts';
import type { Trace, TracedJob, Truth } from '../../line/trace/trace.ts';
import { partLines, type StoryLine } from '../trace/part-lines.ts';
import { type Manner, type Stage, stagesOf } from './course.ts';
import { lastUpTo, sums } from './deltas.ts';
import type { Levels, Playback, PlaybackCrew, PlaybackStation } from './playback.ts';
import { filled, tracksOf } from './shapes.ts';

/** Where a part is at a moment; times in ms since the start of the run. */
export interface Whereabouts {
  readonly part: number;
  readonly manner: Manner;
  readonly station: number;
  readonly machine: number;
  readonly since: number;
  /** When that changes; the end of the run where it does not. */
  readonly until: number;
}

export interface Counts {
  readonly started: number;
  readonly good: number;
  readonly scrapped: number;
  readonly turnedAway: number;
}

/** Values over time, quick to look up. */
export interface Track {
  readonly at: Float64Array;
  readonly value: ArrayLike<number>;
}

const trackOf = ({ at, value }: Levels): Track => ({ at: sums(at), value: sums(value) });
const valueAt = ({ at, value }: Track, now: number): number => value[lastUpTo(at, now)]!;

const FATES = ['good', 'scrapped', 'turned-away'] as const;

/** A run as a page holds it, read so that any moment of it is found at once. All moments in ms. */
export class Run {
  readonly playback: Playback;
  readonly states: readonly (readonly Track[])[];
  readonly fronts: readonly (Track | null)[];
  readonly onHand: readonly (Track | null)[];
  /** Finished goods on hand; null where nobody orders. */
  readonly goods: Track | null;
  readonly crews: Trace['crews'];
  private readonly demand: Trace['demand'];
  private readonly started: Float64Array;
  /** Of all events, part by part. */
  private readonly at: Float64Array;
  /** The place of each part's first event among all; one more at the end. */
  private readonly first: Int32Array;
  private readonly numbers: Float64Array;
  private readonly firstNumber: Int32Array;
  private readonly stages: readonly (readonly Stage[])[];
  /** When each part left; never, where it did not. */
  private readonly leftAt: Float64Array;
  /** When parts left, sorted, by how. */
  private readonly left: Readonly<Record<string, Float64Array>>;

  constructor(playback: Playback) {
    this.playback = playback;
    const { stations, stocks, parts, courses } = playback;
    this.states = stations.map(({ states }) => states.map(({ at, value }) => ({ at: sums(at), value })));
    this.fronts = stations.map(({ buffer }) => buffer && trackOf(buffer.level));
    this.onHand = stocks.map(({ level }) => level && trackOf(level));
    this.crews = playback.crews.map(({ name, number, ...crew }) => ({ name, number, jobs: jobsOf(crew) }));
    this.goods = playback.demand && trackOf(playback.demand.level);
    this.demand = playback.demand && demandIn(playback.demand);
    this.started = sums(parts.started);
    this.stages = stagesOf(playback);
    this.first = starts(parts.course.map((course) => courses[course]!.length));
    this.at = this.eventTimes();
    [this.numbers, this.firstNumber] = this.allNumbers();
    const fates = parts.course.map((course) => FATES.find((fate) => fate === courses[course]!.at(-1)?.kind));
    this.leftAt = Float64Array.from(fates, (fate, i) =>
      fate === undefined ? Number.POSITIVE_INFINITY : this.at[this.first[i + 1]! - 1]!,
    );
    this.left = Object.fromEntries(
      FATES.map((fate) => [fate, this.leftAt.filter((_, i) => fates[i] === fate).sort()]),
    );
  }

  get parts(): number {
    return this.started.length;
  }

  /** What a machine is doing. */
  stateAt(station: number, machine: number, now: number): State {
    return STATES[valueAt(this.states[station]![machine]!, now)]!;
  }

  /** Parts in front of a station; null where none can wait. */
  frontAt(station: number, now: number): number | null {
    const front = this.fronts[station]!;
    return front && valueAt(front, now);
  }

  /** Pieces on hand; null where the stock is not limited. */
  onHandAt(stock: number, now: number): number | null {
    const level = this.onHand[stock]!;
    return level && valueAt(level, now);
  }

  /** Finished goods on hand; null where nobody orders. */
  goodsAt(now: number): number | null {
    return this.goods && valueAt(this.goods, now);
  }

  /** Those of a crew who are on their way or at work, with their jobs. */
  busyAt(crew: number, now: number): TracedJob[] {
    const seconds = now / 1000;
    return this.crews[crew]!.jobs.filter(
      ({ sent, left }) => sent <= seconds && (left === null || left > seconds),
    );
  }

  countsAt(now: number): Counts {
    const left = (fate: string) => lastUpTo(this.left[fate]!, now) + 1;
    return {
      ...{ started: lastUpTo(this.started, now) + 1, good: left('good') },
      ...{ scrapped: left('scrapped'), turnedAway: left('turned-away') },
    };
  }

  /** Where a part is; null before it is started, once it has left, and while nothing is known of it. */
  whereIs(part: number, now: number): Whereabouts | null {
    const [from, to] = [this.first[part - 1]!, this.first[part]!];
    const event = lastUpTo(this.at, now, from, to) - from;
    if (event < 0) return null;
    const stage = this.stages[this.playback.parts.course[part - 1]!]![event]!;
    const { manner, station, machine, until } = stage;
    if (manner === 'gone') return null;
    let since = event;
    const stages = this.stages[this.playback.parts.course[part - 1]!]!;
    while (since > 0 && stages[since - 1] === stage) since--;
    const end = from + until < to ? this.at[from + until]! : this.playback.end;
    return { part, manner, station, machine, since: this.at[from + since]!, until: end };
  }

  /** All parts in the line, those that were started first in front. */
  partsAt(now: number): Whereabouts[] {
    const last = lastUpTo(this.started, now);
    const there: Whereabouts[] = [];
    for (let i = 0; i <= last; i++) {
      if (this.leftAt[i]! <= now) continue;
      const where = this.whereIs(i + 1, now);
      if (where !== null) there.push(where);
    }
    return there;
  }

  startOf(part: number): number {
    return this.started[part - 1]!;
  }

  /** What happened to a part, and what it truly was, in the words of `mendline trace`. */
  storyOf(part: number): { readonly seen: readonly StoryLine[]; readonly truth: readonly StoryLine[] } {
    const { events, truths } = this.told(part);
    const end = this.playback.end / 1000;
    const last = events.at(-1);
    const gone = FATES.find((fate) => fate === last?.kind);
    const parts: Trace['parts'][number][] = [];
    parts[part - 1] = {
      ...{ number: part, started: this.startOf(part) / 1000, station: events[0]?.station ?? '', from: null },
      left: gone && last ? { at: last.at, as: gone } : null,
    };
    if (events.length === 0) return { seen: [], truth: [] };
    const lines = (withTruth: boolean) =>
      partLines(
        { events, truths, parts, end, crews: this.crews, demand: this.demand },
        this.playback,
        part,
        withTruth,
      );
    const seen = lines(false);
    const texts = new Set(seen.map((line) => JSON.stringify(line)));
    return { seen, truth: lines(true).filter((line) => !texts.has(JSON.stringify(line))) };
  }

  /** The events of one part as the trace has them, to the millisecond. */
  told(part: number): { readonly events: readonly PartEvent[]; readonly truths: readonly Truth[] } {
    const { parts, courses, truths } = this.playback;
    let place = this.firstNumber[part - 1]!;
    const next = () => this.numbers[place++]!;
    const from = this.first[part - 1]!;
    const at = (event: number) => this.at[from + event]! / 1000;
    const whole = (rest: object, event: number) => ({ ...filled(rest, next), at: at(event), part });
    const events = courses[parts.course[part - 1]!]!.map((rest, i) => whole(rest, i));
    const true_ = truths[parts.truth[part - 1]!]!.map((rest) => whole(rest, Number(rest.at)));
    return { events: events as unknown as PartEvent[], truths: true_ as unknown as Truth[] };
  }

  private eventTimes(): Float64Array {
    const { after } = this.playback.parts;
    const at = new Float64Array(after.length);
    for (let i = 0; i < this.parts; i++) {
      let now = this.started[i]!;
      for (let k = this.first[i]!; k < this.first[i + 1]!; k++) at[k] = now += after[k]!;
    }
    return at;
  }

  private allNumbers(): [Float64Array, Int32Array] {
    const { courses, truths, parts } = this.playback;
    const tracks = [courses, truths].map((all) => all.map((rests) => rests.flatMap(tracksOf)));
    const own = (i: number) => [...tracks[0]![parts.course[i]!]!, ...tracks[1]![parts.truth[i]!]!];
    const numbers = new Float64Array(parts.numbers.length);
    const first = new Int32Array(this.parts + 1);
    const last = new Map<string, number>();
    let place = 0;
    for (let i = 0; i < this.parts; i++) {
      first[i] = place;
      for (const track of own(i)) {
        const number = (last.get(track) ?? 0) + parts.numbers[place]!;
        last.set(track, number);
        numbers[place++] = number;
      }
    }
    first[this.parts] = place;
    return [numbers, first];
  }
}

/** Where each of several lists begins when they stand one behind the other. */
function starts(lengths: readonly number[]): Int32Array {
  const first = new Int32Array(lengths.length + 1);
  for (const [i, length] of lengths.entries()) first[i + 1] = first[i]! + length;
  return first;
}

/** The jobs of a crew as the trace has them, to the millisecond. */
function jobsOf({ kinds, kind, sent, way, took }: Omit<PlaybackCrew, 'name' | 'number'>): TracedJob[] {
  return Array.from(sums(sent), (at, i): TracedJob => {
    const [member, station, machine, job] = kinds[kind[i]!]!;
    const came = at + way[i]!;
    const left = took[i] === null ? null : (came + took[i]!) / 1000;
    const times = { called: at / 1000, sent: at / 1000, came: came / 1000, left };
    return { member, station, machine, job, ...times };
  });
}

function demandIn({ part, order, at }: NonNullable<Playback['demand']>): NonNullable<Trace['demand']> {
  const [parts, orders, times] = [sums(part), sums(order), sums(at)];
  const handed = Array.from(parts, (own, i) => ({ part: own, order: orders[i]!, at: times[i]! / 1000 }));
  return { level: { at: [], value: [] }, orders: [], handed };
}

/** The name of a machine where its station has several, and of the station else. */
export const machineName = ({ name, names }: PlaybackStation, machine: number): string =>
  names.length > 1 ? names[machine]! : name;
