/** Whatever can have something happen to it. `code` says what; each actor numbers its own. */
export interface Actor {
  /** What messages call it. */
  readonly name: string;
  /** `stamp` is the number given when the event was scheduled; an actor compares it to drop stale events. */
  happen(code: number, stamp: number): void;
}

/** Events at one instant beyond this count are taken for an endless loop. */
const MOST_AT_ONE_INSTANT = 1_000_000;
/** The last events of an endless loop, whose actors are looked at. */
const LOOKED_AT = 100;
/** Of those actors, so many are named. */
const MOST_NAMED = 4;

/** The line repeats events for ever without the clock moving. */
export class EndlessLoopError extends Error {
  readonly time: number;
  /** Those at whom the last events happened, the latest first. */
  readonly actors: readonly Actor[];
  constructor(time: number, actors: readonly Actor[]) {
    const names = [...new Set(actors.map(({ name }) => `"${name}"`))].slice(0, MOST_NAMED);
    super(
      `more than ${MOST_AT_ONE_INSTANT} events happened at ${time} s without the clock moving, the last at ${names.join(', ')}: look for times of 0 s there and around it`,
    );
    this.name = 'EndlessLoopError';
    this.time = time;
    this.actors = actors;
  }
}

/**
 * The event calendar and the clock: a binary heap ordered by (time, order of scheduling), so simultaneous
 * events happen in the order in which they were scheduled. Scheduling allocates nothing.
 * Time is in seconds and starts at 0.
 *
 * While an event happens its place at the top stands empty, and the first event scheduled meanwhile sinks in
 * from there: taking one and putting one, which is what most events do, costs one way through the heap.
 */
export class Calendar {
  /** The present time, s. */
  now = 0;
  /** Events that have happened. */
  events = 0;
  private actors: Actor[] = [];
  /** Places in use, the empty one at the top included. */
  private size = 0;
  private topEmpty = false;
  private order = 0;
  /** Two numbers a place: time and order of scheduling. A place not in use holds infinity, so that it never comes first. */
  private keys = new Float64Array(128).fill(Number.POSITIVE_INFINITY);
  /** Two numbers a place: `who * 16 + code`, and the stamp. */
  private tags = new Int32Array(128);

  /** Number of events still to happen. */
  get pending(): number {
    return this.topEmpty ? this.size - 1 : this.size;
  }

  /** Enters an actor and returns the number that `schedule` takes. */
  enter(actor: Actor): number {
    return this.actors.push(actor) - 1;
  }

  /**
   * Puts down an event for actor number `who` at `time` (s, not before now). `code` is 0 to 15.
   * @throws RangeError when the time is past or is none.
   */
  schedule(time: number, who: number, code: number, stamp: number): void {
    if (!(time >= this.now))
      throw new RangeError(`an event at ${time} s cannot be scheduled at ${this.now} s`);
    const tag = (who << 4) | code;
    if (this.topEmpty) {
      this.topEmpty = false;
      this.sink(2 * this.size, time, this.order++, tag, stamp);
    } else this.rise(time, this.order++, tag, stamp);
  }

  /**
   * Lets everything happen up to and including `end` (s), then sets the clock to `end`. An event at exactly
   * `end` happens. Returns false when the calendar ran dry first.
   * @throws EndlessLoopError
   */
  run(end: number): boolean {
    const actors = this.actors;
    let atThisInstant = 0;
    let looked: Actor[] = [];
    // An event that threw, or one that runs the calendar itself, left the top empty.
    if (this.topEmpty) this.fillTop();
    while (this.size > 0) {
      const time = this.keys[0]!;
      if (time > end) break;
      const tag = this.tags[0]!;
      const stamp = this.tags[1]!;
      const actor = actors[tag >> 4]!;
      this.topEmpty = true;
      if (time > this.now) {
        this.now = time;
        atThisInstant = 0;
      } else if (++atThisInstant > MOST_AT_ONE_INSTANT - LOOKED_AT) {
        if (atThisInstant === MOST_AT_ONE_INSTANT - LOOKED_AT + 1) looked = [];
        looked.push(actor);
        if (atThisInstant > MOST_AT_ONE_INSTANT) throw new EndlessLoopError(time, looked.reverse());
      }
      this.events++;
      actor.happen(tag & 15, stamp);
      if (this.topEmpty) this.fillTop();
    }
    this.now = end;
    return this.size > 0;
  }

  /** Puts the last event into the empty top, or empties the calendar. */
  private fillTop(): void {
    this.topEmpty = false;
    const last = 2 * --this.size;
    const keys = this.keys;
    const tags = this.tags;
    const time = keys[last]!;
    const order = keys[last + 1]!;
    keys[last] = Number.POSITIVE_INFINITY;
    keys[last + 1] = Number.POSITIVE_INFINITY;
    if (last > 0) this.sink(last, time, order, tags[last]!, tags[last + 1]!);
  }

  /** From the empty top downwards; `end` is where the places in use end, two numbers a place. */
  private sink(end: number, time: number, order: number, tag: number, stamp: number): void {
    const keys = this.keys;
    const tags = this.tags;
    let hole = 0;
    for (;;) {
      let child = 2 * hole + 2;
      if (child >= end) break;
      const left = keys[child]!;
      const right = keys[child + 2]!;
      // Which child comes first is a coin toss that no processor foresees: chosen by arithmetic, not by a branch.
      if (left !== right) child += Number(right < left) << 1;
      else if (keys[child + 3]! < keys[child + 1]!) child += 2;
      const first = keys[child]!;
      if (time < first || (time === first && order < keys[child + 1]!)) break;
      keys[hole] = first;
      keys[hole + 1] = keys[child + 1]!;
      tags[hole] = tags[child]!;
      tags[hole + 1] = tags[child + 1]!;
      hole = child;
    }
    keys[hole] = time;
    keys[hole + 1] = order;
    tags[hole] = tag;
    tags[hole + 1] = stamp;
  }

  /** From a new last place upwards. A new event has the highest order, so it rises only past strictly later times. */
  private rise(time: number, order: number, tag: number, stamp: number): void {
    // One place more than in use, so that the last place always has a neighbour to be compared with.
    if (2 * this.size + 2 === this.keys.length) this.grow();
    const keys = this.keys;
    const tags = this.tags;
    let hole = 2 * this.size++;
    while (hole > 0) {
      const parent = ((hole - 2) >> 2) << 1;
      const above = keys[parent]!;
      if (above <= time) break;
      keys[hole] = above;
      keys[hole + 1] = keys[parent + 1]!;
      tags[hole] = tags[parent]!;
      tags[hole + 1] = tags[parent + 1]!;
      hole = parent;
    }
    keys[hole] = time;
    keys[hole + 1] = order;
    tags[hole] = tag;
    tags[hole + 1] = stamp;
  }

  private grow(): void {
    const keys = new Float64Array(2 * this.keys.length).fill(Number.POSITIVE_INFINITY);
    keys.set(this.keys);
    this.keys = keys;
    const tags = new Int32Array(keys.length);
    tags.set(this.tags);
    this.tags = tags;
  }
}
