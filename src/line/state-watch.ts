import type { Actor, Calendar } from '../kernel/calendar.ts';

const LOOK = 0;
const RIPE = 1;
/** The line has started, and what it began with has been told. */
const STARTED = 2;
const BEGUN = 3;

export interface StateRules {
  /** By state number, whether it counts. */
  readonly counts: readonly boolean[];
  /** How long a machine must have been so, s. */
  readonly for: number;
  /** How many machines must be so. */
  readonly least: number;
}

/**
 * Whether so many machines of a station have been in certain states for so long. It is told by way of the calendar, at
 * the same instant: a machine that changes its state is not done yet. At the start, once, after the station has begun.
 */
export class StateWatch implements Actor {
  readonly name: string;
  private readonly rules: StateRules;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly tell: (holds: boolean) => void;
  /** By machine: when it will have been so for long enough, s; NaN while it is not so. */
  private readonly ripeAt: Float64Array;
  private readonly ripe: boolean[];
  private count = 0;
  private holds = false;
  private told = false;

  /** @param states of the machines at present, by number */
  constructor(
    station: string,
    rules: StateRules,
    states: readonly number[],
    calendar: Calendar,
    tell: (holds: boolean) => void,
  ) {
    this.name = `state of ${station}`;
    this.rules = rules;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.tell = tell;
    this.ripeAt = new Float64Array(states.length).fill(Number.NaN);
    this.ripe = states.map(() => false);
    for (const [slot, state] of states.entries()) this.enters(slot, state);
    this.calendar.schedule(this.calendar.now, this.me, STARTED, 0);
  }

  enters(slot: number, state: number): void {
    if (this.rules.counts[state]! !== Number.isNaN(this.ripeAt[slot]!)) return;
    const { now } = this.calendar;
    if (this.rules.counts[state]!) {
      this.ripeAt[slot] = now + this.rules.for;
      this.calendar.schedule(this.ripeAt[slot]!, this.me, RIPE, slot);
      return;
    }
    this.ripeAt[slot] = Number.NaN;
    if (!this.ripe[slot]) return;
    this.ripe[slot] = false;
    this.count--;
    this.calendar.schedule(now, this.me, LOOK, 0);
  }

  happen(code: number, slot: number): void {
    if (code === RIPE) {
      // It may have been otherwise since, and so again.
      if (this.ripe[slot] || this.ripeAt[slot] !== this.calendar.now) return;
      this.ripe[slot] = true;
      this.count++;
    }
    // Behind all that the start of the line brings about.
    if (code === STARTED) return this.calendar.schedule(this.calendar.now, this.me, BEGUN, 0);
    const holds = this.count >= this.rules.least;
    if (holds === this.holds && (this.told || code !== BEGUN)) return;
    this.told = true;
    this.holds = holds;
    this.tell(holds);
  }
}
