import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Buffer } from './buffer.ts';
import type { Care } from './care.ts';
import { RESTARTS, RESUMES, SCRAPS } from './fate.ts';
import type { Consumer, Place, Unloader, Waiter } from './place.ts';
import {
  AWAITING_HANDLING,
  AWAITING_SPARE,
  AWAITING_TECHNICIAN,
  BLOCKED,
  DOWN,
  HELD,
  OFF_SHIFT,
  SET_UP,
  STARVED,
  STATES,
  WORKING,
} from './state.ts';

const FINISH = 0;
const WORN = 1;

/** What a machine does to parts. */
export interface Operation {
  /** Whether the machine could start at once if it were handed a part. */
  ready(machine: Machine): boolean;
  /**
   * Takes what one cycle needs, puts the parts on the machine (`load`, `loaded`) and sets `cycle` (s). Returns
   * false, having taken nothing, when something is missing.
   */
  begin(machine: Machine): boolean;
  /** The cycle is over: changes the parts, and sets `outlets` where they are not always the same. */
  finish?(machine: Machine): void;
}

/** Follows the states of machines. */
interface StateWatch {
  enters(slot: number, state: number): void;
}

/** Where a machine stands in its cycle. */
const EMPTY = 0;
/** Set up, maintained or warmed up: no cycle goes on. */
const PREPARING = 1;
const LOADING = 2;
const CYCLE = 3;
/** In a cycle that something halts. */
const PAUSED = 4;
const UNLOADING = 5;
const FINISHED = 6;

/** How a machine differs from one that works at its designed speed and finishes its cycle at the end of a shift. */
export interface Habits {
  /** The cycle takes this many times as long as designed. */
  readonly slowness: number;
  /** While down: whether it passes on what is finished, and whether it takes a new load. */
  readonly unloadsDown: boolean;
  readonly loadsDown: boolean;
  /** What becomes of the cycle under way when the shift ends; null finishes it. */
  readonly atShiftEnd: number | null;
}

/**
 * One machine of a station: takes a load, works on it, passes it on. Blocking after service: a finished part that
 * has nowhere to go stays. While down it may still pass on what is finished and takes nothing new, unless its
 * habits say otherwise; while held it finishes its cycle and takes nothing new.
 */
export class Machine implements Actor, Consumer, Unloader, Waiter {
  readonly name: string;
  /** Itself: what asks for the machines of a station may ask a single one. */
  readonly machines: readonly Machine[] = [this];
  /** Its number within the station, from 0. */
  readonly slot: number;
  /** Rows of the parts on the machine, and how many of them are still here (from `load[moved]` on). */
  readonly load: Int32Array;
  readonly outlets: Place[] = [];
  /** Seconds spent in each state up to the last change, by state number. */
  readonly seconds = new Float64Array(STATES.length);
  state: number = STARVED;
  finishedCycles = 0;
  /** Seconds of work done up to the last interruption or finish; what wears tools and machines. */
  worked = 0;
  /** When it last ended a cycle, was interrupted in one or was warmed up, s, where it warms up; it starts cold. */
  lastWorked = Number.NEGATIVE_INFINITY;
  loaded = 0;
  /** Designed time of the present cycle, s. */
  cycle = 0;
  inbox: Buffer | null = null;
  operation!: Operation;
  scrap!: Place;
  /** Null when there is none of it, which keeps the plain cycle short. */
  care: Care | null = null;
  /** Breakdowns that count working time: lets the one that is due happen. */
  wear: { fail(): void } | null = null;
  /** Called when it is blocked, where the way of parts has a circle in which stations could wait for each other. */
  onBlocked: ((machine: Machine) => void) | null = null;
  /** Told of each change of its state; null where nobody asks. */
  watches: StateWatch[] | null = null;
  private readonly calendar: Calendar;
  private readonly me: number;
  /** The cycle takes this many times as long as designed: by its habits, and now. */
  private readonly ownSlowness: number;
  private slowness: number;
  private readonly unloadsDown: boolean;
  private readonly loadsDown: boolean;
  private readonly atShiftEnd: number | null;
  /** Worked seconds at which a breakdown falls due. */
  private wearsAt = Number.POSITIVE_INFINITY;
  private since = 0;
  private phase = EMPTY;
  /** What it is doing while it prepares or is handled, by state number. */
  private shownMeanwhile: number = SET_UP;
  private moved = 0;
  private remaining = 0;
  private segment = 0;
  private stamp = 0;
  private fate = RESUMES;
  /** Whether its load is on already while it warms up: it does so in the middle of a cycle. */
  private laden = false;
  /** Whether the operation does something when the cycle is over. */
  private changes = false;
  /** Reasons not to take a new load: stops, holds and being off shift, together. */
  private barred = 0;
  private stops = 0;
  /** Stops that wait for a technician. */
  private unattended = 0;
  /** Those among them that wait for a spare first. */
  private spareless = 0;
  private holds = 0;
  private off = false;

  /** @param most parts in one load */
  constructor(name: string, slot: number, calendar: Calendar, most: number, habits: Habits) {
    this.name = name;
    this.slot = slot;
    this.load = new Int32Array(most);
    this.ownSlowness = habits.slowness;
    this.slowness = habits.slowness;
    this.unloadsDown = habits.unloadsDown;
    this.loadsDown = habits.loadsDown;
    this.atShiftEnd = habits.atShiftEnd;
    this.calendar = calendar;
    this.me = calendar.enter(this);
  }

  /** @param next where its parts go on to unless the operation says otherwise */
  assign(operation: Operation, next: Place): void {
    this.operation = operation;
    this.changes = operation.finish !== undefined;
    for (let i = 0; i < this.load.length; i++) this.outlets[i] = next;
  }

  /** Puts an operation around its own. Before the first load. */
  wrap(around: (inner: Operation) => Operation): void {
    this.operation = around(this.operation);
    this.changes = this.operation.finish !== undefined;
  }

  happen(code: number, stamp: number): void {
    if (stamp !== this.stamp) return;
    if (code === FINISH) this.finish();
    else this.wear!.fail();
  }

  get couldStart(): boolean {
    // What falls due at this very instant is done before a part is taken.
    return this.waits && this.operation.ready(this) && !this.care?.upkeep?.due();
  }

  wake(): void {
    if (this.waits) this.begin();
  }

  /** Does what is due and then starts on the next load, if it may and can. The machine must be empty. */
  begin(): void {
    if (this.barred > 0 && !this.loadsNow()) return this.show();
    if (this.care !== null && this.isCaredFor(this.care)) return;
    if (!this.operation.begin(this)) {
      this.show();
      // A buffer without places opens only now.
      this.inbox?.freed();
      return;
    }
    this.remaining = this.cycle * this.slowness;
    if (this.care !== null) this.prepare(this.care);
    else this.start();
    if (this.inbox?.isAwaited) this.inbox.freed();
  }

  /** Passes on finished parts as far as there is room, then starts anew once empty. */
  unload(): void {
    // A machine that waited at several places is told by each of them.
    if (this.phase !== FINISHED) return;
    if (this.stops > 0 && !this.unloadsDown) return this.show();
    while (this.moved < this.loaded) {
      const outlet = this.outlets[this.moved]!;
      if (!outlet.accept(this.load[this.moved]!)) {
        this.show();
        outlet.wait(this);
        if (this.onBlocked !== null) this.onBlocked(this);
        return;
      }
      this.moved++;
    }
    this.empty();
  }

  /** Parts on the machine now. */
  get partsHere(): number {
    return this.loaded - this.moved;
  }

  get blockedAt(): Place | null {
    return this.phase === FINISHED && this.moved < this.loaded ? this.outlets[this.moved]! : null;
  }

  get blockedRow(): number {
    return this.load[this.moved]!;
  }

  /** Whether it is neither down, for a breakdown or for maintenance, nor off shift. */
  get up(): boolean {
    return !this.standsBesides(0);
  }

  /** Whether it is down or off shift for more than so many of its stops. */
  standsBesides(stops: number): boolean {
    return this.stops > stops || this.off || (this.stops === 0 && this.state === DOWN);
  }

  /**
   * Stops the machine at once. Stops add up: it goes on after as many `resume` calls.
   * @param fate what becomes of the cycle under way: RESUMES, RESTARTS or SCRAPS
   * @param attended false while nobody works on it yet, until `attend`
   */
  stop(fate: number, attended = true): void {
    this.stops++;
    this.barred++;
    if (!attended) this.unattended++;
    this.interrupt(fate);
  }

  /** A technician has come to one of its stops. */
  attend(): void {
    this.unattended--;
    this.show();
  }

  /** One of its stops waits for a spare, until `supplied`. */
  lack(): void {
    this.spareless++;
    this.show();
  }

  supplied(): void {
    this.spareless--;
    this.show();
  }

  resume(): void {
    this.stops--;
    this.barred--;
    if (this.stops > 0) this.show();
    else this.goOn();
  }

  /** Takes no new load until as many `release` calls. The cycle under way is finished. */
  hold(): void {
    this.holds++;
    this.barred++;
    this.show();
  }

  /** @param begins whether it may begin at once if it is empty */
  release(begins = true): void {
    this.holds--;
    this.barred--;
    if (this.phase !== EMPTY) return;
    if (begins) this.begin();
    else this.show();
  }

  /** Works at this share of its own speed from the next cycle on. */
  slow(to: number): void {
    this.slowness = this.ownSlowness / to;
  }

  goOffShift(): void {
    this.off = true;
    this.barred++;
    // A cycle that ends with the shift is finished, not under way.
    const ends = this.phase === CYCLE && this.segment + this.remaining <= this.calendar.now;
    if (this.atShiftEnd === null || ends) this.show();
    else this.interrupt(this.atShiftEnd);
  }

  comeOnShift(): void {
    this.off = false;
    this.barred--;
    this.goOn();
  }

  /** The next breakdown by working time falls due after so many worked seconds. */
  wornAt(worked: number): void {
    this.wearsAt = worked;
  }

  /** Brings the work done up to now, lets `change` alter when it is worn, and plans the rest of the cycle anew. */
  reconsider(change: () => void): void {
    if (this.phase !== CYCLE) return change();
    const worked = this.calendar.now - this.segment;
    this.worked += worked;
    this.remaining = Math.max(0, this.remaining - worked);
    this.stamp++;
    change();
    this.work();
  }

  /** What is done to it between cycles, or by a handler around one, is shown as `state` from now on. */
  meanwhile(state: number): void {
    this.shownMeanwhile = state;
    this.show();
  }

  /** What was done to the empty machine is over. */
  prepared(): void {
    this.phase = EMPTY;
    this.begin();
  }

  /** The warm-up of a loaded machine is over. */
  warm(): void {
    this.lastWorked = this.calendar.now;
    if (!this.laden) return this.putOn();
    this.laden = false;
    this.start();
  }

  /** The handler has put the load on. */
  handledIn(): void {
    this.start();
  }

  /** The handler has taken the finished load off. */
  handledOut(): void {
    this.phase = FINISHED;
    this.unload();
  }

  /** Brings the seconds of the present state up to now. */
  settle(): void {
    const now = this.calendar.now;
    this.seconds[this.state]! += now - this.since;
    this.since = now;
  }

  /** Whether something is due that is done to the empty machine now. */
  private isCaredFor({ upkeep }: Care): boolean {
    const task = upkeep?.due();
    if (!task) return false;
    this.phase = PREPARING;
    task.start();
    return true;
  }

  /** The load is taken: warms up if it idled too long. */
  private prepare({ warmUp }: Care): void {
    if (!warmUp?.isNeeded) return this.putOn();
    this.phase = PREPARING;
    warmUp.start();
  }

  private putOn(): void {
    const handling = this.care?.handling;
    if (!handling || handling.load === 0) return this.start();
    this.phase = LOADING;
    handling.putOn();
  }

  /** A cycle has ended: whether the finished load has to be taken off first. */
  private isTakenOff({ handling }: Care): boolean {
    this.lastWorked = this.calendar.now;
    if (!handling || handling.unload === 0 || this.loaded === 0) return false;
    this.phase = UNLOADING;
    handling.takeOff();
    return true;
  }

  /** Starts the cycle on the load, or leaves it to the end of what is in the way. */
  private start(): void {
    if (this.barred > 0 && this.halted()) {
      this.phase = PAUSED;
      this.show();
    } else this.work();
  }

  private work(): void {
    this.phase = CYCLE;
    const now = this.calendar.now;
    this.segment = now;
    if (this.state !== WORKING) this.enter(WORKING);
    const life = this.wearsAt - this.worked;
    if (life < this.remaining) {
      // The clock has limited resolution, so the rest of a life may come out a hair below zero.
      this.calendar.schedule(now + Math.max(0, life), this.me, WORN, this.stamp);
    } else this.calendar.schedule(now + this.remaining, this.me, FINISH, this.stamp);
  }

  private finish(): void {
    this.worked += this.remaining;
    this.finishedCycles++;
    this.phase = FINISHED;
    if (this.changes) this.operation.finish!(this);
    if (this.care !== null && this.isTakenOff(this.care)) return;
    this.unload();
  }

  private empty(): void {
    this.loaded = 0;
    this.moved = 0;
    this.phase = EMPTY;
    this.begin();
  }

  /** Whether what is in the way halts a cycle, too. */
  private halted(): boolean {
    return this.stops > 0 || (this.off && this.atShiftEnd !== null);
  }

  /** Whether it would take a load if there were one. */
  private get waits(): boolean {
    return this.state === STARVED || (this.phase === EMPTY && this.loadsNow());
  }

  /** Whether it takes a load although it is down. */
  private loadsNow(): boolean {
    return this.loadsDown && this.stops > 0 && this.holds === 0 && !this.off;
  }

  private interrupt(fate: number): void {
    if (this.phase === CYCLE) {
      const worked = this.calendar.now - this.segment;
      this.worked += worked;
      // Stopped at the instant it would have finished, it may seem to have worked a hair too long.
      this.remaining = Math.max(0, this.remaining - worked);
      this.lastWorked = this.calendar.now;
      this.stamp++;
      this.phase = PAUSED;
    }
    if (this.phase === PAUSED) this.fate = Math.max(this.fate, fate);
    this.show();
  }

  /** Something that was in the way is gone. */
  private goOn(): void {
    if (this.phase === EMPTY) return this.begin();
    if (this.phase === FINISHED && !this.unloadsDown) return this.unload();
    if (this.phase !== PAUSED || this.halted()) return this.show();
    const fate = this.fate;
    this.fate = RESUMES;
    if (fate === SCRAPS) {
      for (let i = 0; i < this.loaded; i++) this.scrap.accept(this.load[i]!);
      return this.empty();
    }
    if (fate === RESTARTS) this.remaining = this.cycle * this.slowness;
    if (this.care !== null && this.isWarmedUp(this.care)) return;
    this.work();
  }

  /** Whether it cooled down while its cycle was halted, and warms up first. */
  private isWarmedUp({ warmUp }: Care): boolean {
    if (!warmUp?.isNeeded) return false;
    this.laden = true;
    this.phase = PREPARING;
    warmUp.start();
    return true;
  }

  /** Enters the state that follows from what is going on. */
  private show(): void {
    const state = this.doing();
    if (state !== this.state) this.enter(state);
  }

  private doing(): number {
    if (this.off && this.rests) return OFF_SHIFT;
    if (this.stops > 0) return this.stopped();
    switch (this.phase) {
      case CYCLE:
        return WORKING;
      case FINISHED:
        return BLOCKED;
      case EMPTY:
        return this.holds > 0 ? HELD : STARVED;
      default:
        return this.shownMeanwhile;
    }
  }

  /** Whether somebody is at one of its stops, is called to one, or all wait for a spare. */
  private stopped(): number {
    if (this.unattended < this.stops) return DOWN;
    return this.spareless === this.stops ? AWAITING_SPARE : AWAITING_TECHNICIAN;
  }

  /** Whether nothing is done at it: no cycle, and nobody who sets it up, loads or unloads it. */
  private get rests(): boolean {
    switch (this.phase) {
      case CYCLE:
        return false;
      case PREPARING:
      case LOADING:
      case UNLOADING:
        return this.shownMeanwhile === AWAITING_TECHNICIAN || this.shownMeanwhile === AWAITING_HANDLING;
      default:
        return true;
    }
  }

  private enter(state: number): void {
    const now = this.calendar.now;
    this.seconds[this.state]! += now - this.since;
    this.since = now;
    this.state = state;
    if (this.watches !== null) for (const watch of this.watches) watch.enters(this.slot, state);
  }
}
