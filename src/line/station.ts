import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Buffer } from './buffer.ts';
import type { Consumer, Place, Unloader } from './place.ts';
import { BLOCKED, DOWN, HELD, STARVED, STATES, WORKING } from './state.ts';

const FINISH = 0;
const WORN = 1;
const CLOCK = 2;
const REPAIRED = 3;

/** What a station does to parts. */
export interface Operation {
  /** Whether it could start at once if it were handed a part. */
  readonly ready: boolean;
  /**
   * Takes what one cycle needs, puts the parts on the station (`station.load`, `station.loaded`) and sets
   * `station.cycle` (s). Returns false, having taken nothing, when something is missing.
   */
  begin(station: Station): boolean;
  /** The cycle is over: changes the parts and sets `station.outlets`. */
  finish(station: Station): void;
}

/** Draws and rules of a station's breakdowns. */
export interface Breakdown {
  readonly life: Sampler;
  readonly repair: Sampler;
  /** Whether life runs only while the station works, or by the clock. */
  readonly counted: 'working' | 'clock';
}

/**
 * A station: takes a load, works on it, passes it on. Blocking after service: a finished part that has nowhere
 * to go stays. While down or held it may still pass on what is finished, but takes nothing new.
 */
export class Station implements Actor, Consumer, Unloader {
  readonly name: string;
  /** Rows of the parts on the station, and how many of them are still here (from `load[moved]` on). */
  readonly load: Int32Array;
  readonly outlets: Place[] = [];
  /** Seconds spent in each state up to the last change, by state number. */
  readonly seconds = new Float64Array(STATES.length);
  state = STARVED;
  /** When the present state began, s. */
  since = 0;
  /** Sum of the cycle times of all finished cycles, s. */
  finishedSeconds = 0;
  finishedCycles = 0;
  /** When it last failed to pass a part on, s. */
  blockedSince = 0;
  loaded = 0;
  cycle = 0;
  inbox: Buffer | null = null;
  operation!: Operation;
  /** What becomes of a cycle that a stop interrupts. */
  interrupted: 'resumes' | 'restarts' | 'scraps' = 'resumes';
  scrap!: Place;
  readonly #calendar: Calendar;
  readonly #me: number;
  #breakdown: Breakdown | null = null;
  #life = Number.POSITIVE_INFINITY;
  #moved = 0;
  #finished = false;
  #remaining = 0;
  #segment = 0;
  #stamp = 0;
  #stops = 0;
  #holds = 0;

  constructor(name: string, calendar: Calendar, most: number) {
    this.name = name;
    this.load = new Int32Array(most);
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
  }

  /** Lets the station fail from now on. */
  wear(breakdown: Breakdown): void {
    this.#breakdown = breakdown;
    this.#renew();
  }

  happen(code: number, stamp: number): void {
    switch (code) {
      case FINISH:
        if (stamp === this.#stamp) this.#finish();
        break;
      case WORN:
        if (stamp === this.#stamp) this.#fail();
        break;
      case CLOCK:
        this.#fail();
        break;
      case REPAIRED:
        this.#renew();
        this.resume();
        break;
    }
  }

  /** Whether a part handed over now would be started on at once. */
  get couldStart(): boolean {
    return this.state === STARVED && this.operation.ready;
  }

  /** Something it may have waited for has come. */
  wake(): void {
    if (this.state === STARVED) this.begin();
  }

  /** Starts on the next load if it may and can. The station must be empty. */
  begin(): void {
    if (this.#stops > 0) return this.#enter(DOWN);
    if (this.#holds > 0) return this.#enter(HELD);
    if (!this.operation.begin(this)) {
      this.#enter(STARVED);
      // A buffer without places opens only now.
      this.inbox?.freed();
      return;
    }
    this.#enter(WORKING);
    this.#moved = 0;
    this.#finished = false;
    this.#remaining = this.cycle;
    this.#work();
    this.inbox?.freed();
  }

  /** Passes on finished parts as far as there is room, then starts anew once empty. */
  unload(): void {
    while (this.#moved < this.loaded) {
      const outlet = this.outlets[this.#moved]!;
      if (!outlet.accept(this.load[this.#moved]!)) {
        if (this.#stops === 0) this.#enter(BLOCKED);
        this.blockedSince = this.#calendar.now;
        outlet.wait(this);
        return;
      }
      this.#moved++;
    }
    this.loaded = 0;
    this.#moved = 0;
    this.begin();
  }

  /** Parts on the station now. */
  get partsHere(): number {
    return this.loaded - this.#moved;
  }

  /** The place that its next part is waiting to enter, while it is blocked. */
  get blockedBy(): Place | undefined {
    return this.#finished && this.#moved < this.loaded ? this.outlets[this.#moved] : undefined;
  }

  /** Stops the station at once, as a failure does. Stops add up: it goes on after as many `resume` calls. */
  stop(): void {
    if (this.#stops++ > 0) return;
    if (this.state === WORKING) {
      const worked = this.#calendar.now - this.#segment;
      // Stopped at the instant it would have finished, it may seem to have worked a hair too long.
      this.#remaining = Math.max(0, this.#remaining - worked);
      this.#wearBy(worked);
      this.#stamp++;
    }
    this.#enter(DOWN);
  }

  resume(): void {
    if (--this.#stops > 0) return;
    if (this.#moved >= this.loaded) return this.begin();
    if (this.#finished) return this.#enter(BLOCKED);
    if (this.interrupted === 'scraps') {
      for (let i = 0; i < this.loaded; i++) this.scrap.accept(this.load[i]!);
      this.loaded = 0;
      this.#moved = 0;
      return this.begin();
    }
    if (this.interrupted === 'restarts') this.#remaining = this.cycle;
    this.#enter(WORKING);
    this.#work();
  }

  /** Takes no new load until as many `release` calls. The cycle under way is finished. */
  hold(): void {
    this.#holds++;
    if (this.state === STARVED) this.#enter(HELD);
  }

  release(): void {
    if (--this.#holds === 0 && this.state === HELD) this.begin();
  }

  /** Brings the seconds of the present state up to now. */
  settle(): void {
    this.#enter(this.state);
  }

  #work(): void {
    const now = this.#calendar.now;
    this.#segment = now;
    if (this.#life < this.#remaining) this.#calendar.schedule(now + this.#life, this.#me, WORN, this.#stamp);
    else this.#calendar.schedule(now + this.#remaining, this.#me, FINISH, this.#stamp);
  }

  #finish(): void {
    this.#wearBy(this.#remaining);
    this.finishedSeconds += this.cycle;
    this.finishedCycles++;
    this.#finished = true;
    this.#moved = 0;
    this.operation.finish(this);
    this.unload();
  }

  #wearBy(worked: number): void {
    // The clock has limited resolution, so the rest of a life may come out a hair below zero.
    if (this.#life !== Number.POSITIVE_INFINITY) this.#life = Math.max(0, this.#life - worked);
  }

  #fail(): void {
    this.stop();
    this.#calendar.schedule(this.#calendar.now + this.#breakdown!.repair(), this.#me, REPAIRED, 0);
  }

  #renew(): void {
    const { life, counted } = this.#breakdown!;
    if (counted === 'working') this.#life = life();
    else this.#calendar.schedule(this.#calendar.now + life(), this.#me, CLOCK, 0);
  }

  #enter(state: number): void {
    const now = this.#calendar.now;
    this.seconds[this.state]! += now - this.since;
    this.since = now;
    this.state = state;
  }
}
