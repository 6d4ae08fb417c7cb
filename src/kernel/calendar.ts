/** Whatever can have something happen to it. `code` says what; each actor numbers its own. */
export interface Actor {
  /** What messages call it. */
  readonly name: string;
  /** `stamp` is the number given when the event was scheduled; an actor compares it to drop stale events. */
  happen(code: number, stamp: number): void;
}

/** Events at one instant beyond this count are taken for an endless loop. */
const MOST_AT_ONE_INSTANT = 1_000_000;

/** The line repeats events for ever without the clock moving. */
export class EndlessLoopError extends Error {
  readonly time: number;
  readonly actor: Actor;
  constructor(time: number, actor: Actor) {
    super(
      `more than ${MOST_AT_ONE_INSTANT} events happened at ${time} s without the clock moving, the last at "${actor.name}": look for times of 0 s there and around it`,
    );
    this.name = 'EndlessLoopError';
    this.time = time;
    this.actor = actor;
  }
}

/**
 * The event calendar and the clock: a binary heap ordered by (time, order of scheduling), so simultaneous
 * events happen in the order in which they were scheduled. Scheduling allocates nothing.
 * Time is in seconds and starts at 0.
 */
export class Calendar {
  /** The present time, s. */
  now = 0;
  /** Events that have happened. */
  events = 0;
  #actors: Actor[] = [];
  #size = 0;
  #order = 0;
  #times = new Float64Array(64);
  #orders = new Float64Array(64);
  #whats = new Int32Array(64);
  #stamps = new Int32Array(64);

  /** Number of events still to happen. */
  get pending(): number {
    return this.#size;
  }

  /** Enters an actor and returns the number that `schedule` takes. */
  enter(actor: Actor): number {
    return this.#actors.push(actor) - 1;
  }

  /** Puts down an event for actor number `who` at `time` (s, not before now). `code` is 0 to 7. */
  schedule(time: number, who: number, code: number, stamp: number): void {
    if (!(time >= this.now))
      throw new RangeError(`an event at ${time} s cannot be scheduled at ${this.now} s`);
    if (this.#size === this.#times.length) this.#grow();
    const times = this.#times;
    const orders = this.#orders;
    const whats = this.#whats;
    const stamps = this.#stamps;
    // A new event has the highest order, so it rises only past strictly later times.
    let hole = this.#size++;
    while (hole > 0) {
      const parent = (hole - 1) >> 1;
      if (times[parent]! <= time) break;
      times[hole] = times[parent]!;
      orders[hole] = orders[parent]!;
      whats[hole] = whats[parent]!;
      stamps[hole] = stamps[parent]!;
      hole = parent;
    }
    times[hole] = time;
    orders[hole] = this.#order++;
    whats[hole] = (who << 3) | code;
    stamps[hole] = stamp;
  }

  /**
   * Lets everything happen up to and including `end` (s), then sets the clock to `end`. An event at exactly
   * `end` happens. Returns false when the calendar ran dry first.
   */
  run(end: number): boolean {
    const actors = this.#actors;
    let atThisInstant = 0;
    while (this.#size > 0) {
      const time = this.#times[0]!;
      if (time > end) break;
      const what = this.#whats[0]!;
      const stamp = this.#stamps[0]!;
      this.#removeFirst();
      if (time > this.now) atThisInstant = 0;
      else if (++atThisInstant > MOST_AT_ONE_INSTANT) throw new EndlessLoopError(time, actors[what >> 3]!);
      this.now = time;
      this.events++;
      actors[what >> 3]!.happen(what & 7, stamp);
    }
    this.now = end;
    return this.#size > 0;
  }

  #removeFirst(): void {
    const times = this.#times;
    const orders = this.#orders;
    const whats = this.#whats;
    const stamps = this.#stamps;
    const last = --this.#size;
    const time = times[last]!;
    const order = orders[last]!;
    let hole = 0;
    for (;;) {
      let child = 2 * hole + 1;
      if (child >= last) break;
      const right = child + 1;
      if (
        right < last &&
        (times[right]! < times[child]! || (times[right] === times[child] && orders[right]! < orders[child]!))
      ) {
        child = right;
      }
      if (time < times[child]! || (time === times[child] && order < orders[child]!)) break;
      times[hole] = times[child]!;
      orders[hole] = orders[child]!;
      whats[hole] = whats[child]!;
      stamps[hole] = stamps[child]!;
      hole = child;
    }
    times[hole] = time;
    orders[hole] = order;
    whats[hole] = whats[last]!;
    stamps[hole] = stamps[last]!;
  }

  #grow(): void {
    const twice = this.#times.length * 2;
    const wider = <T extends Float64Array | Int32Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    this.#times = wider(this.#times, new Float64Array(twice));
    this.#orders = wider(this.#orders, new Float64Array(twice));
    this.#whats = wider(this.#whats, new Int32Array(twice));
    this.#stamps = wider(this.#stamps, new Int32Array(twice));
  }
}
