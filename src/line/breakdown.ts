import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Client, Service } from './crew.ts';
import type { Machine } from './machine.ts';
import type { Spare } from './spare.ts';
import { Upsets } from './upset.ts';

const FAIL = 0;
const REPAIRED = 1;

export interface BreakdownRules {
  readonly life: Sampler;
  readonly repair: Sampler;
  /** Time to put a spare in where the piece was given to another machine. */
  readonly refit: Sampler;
  /** Whether life runs only while the machine works, or by the clock. */
  readonly counted: 'working' | 'clock';
  /** What becomes of the interrupted cycle. */
  readonly fate: number;
  /** Who repairs it. */
  readonly crew: Service;
  readonly priority: number;
  /** What the repair needs besides; null where it needs nothing. */
  readonly spare: Spare | null;
  /** Called when it is repaired. */
  readonly onDone: (() => void) | null;
}

/** One way in which a machine breaks down, and is repaired as soon as the spare is there, if it needs one, and then one of the crew. */
export class Breakdown implements Actor, Client {
  readonly name: string;
  readonly place: number;
  readonly priority: number;
  /** Worked seconds of the machine at which it fails; infinite while it is down or by the clock. */
  dueAt = Number.POSITIVE_INFINITY;
  readonly machine: Machine;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly rules: BreakdownRules;
  private readonly renewed: () => void;
  /** When it fails by the clock, s, and the number of that life: what was planned for an earlier one is void. */
  private failsAt = Number.POSITIVE_INFINITY;
  private lives = 0;
  /** Life left in a piece that comes from another machine, s; null where the next is new. */
  private lifeLeft: number | null = null;
  /** Whether it has failed or gave its piece away, and is not repaired yet. */
  private broken = false;
  private refits = false;
  /** How many times as fast as designed its life runs, and how many times as long repairs take that begin now. */
  private pace = 1;
  private repairs = 1;
  /** What disturbs them. */
  readonly upsets: { readonly pace: Upsets; readonly repairs: Upsets };

  /** @param renewed called when `dueAt` is set */
  constructor(
    name: string,
    place: number,
    machine: Machine,
    calendar: Calendar,
    rules: BreakdownRules,
    renewed: () => void,
  ) {
    this.name = name;
    this.place = place;
    this.priority = rules.priority;
    this.machine = machine;
    this.calendar = calendar;
    this.upsets = { pace: new Upsets(calendar), repairs: new Upsets(calendar) };
    this.me = calendar.enter(this);
    this.rules = rules;
    this.renewed = renewed;
    if (rules.spare !== null) rules.spare.breakdown = this;
  }

  /** Lets its life run anew. */
  renew(): void {
    const life = (this.lifeLeft ?? this.rules.life()) / this.pace;
    this.lifeLeft = null;
    if (this.rules.counted === 'clock') {
      this.failsAt = this.calendar.now + life;
      this.calendar.schedule(this.failsAt, this.me, FAIL, ++this.lives);
    } else {
      this.dueAt = this.machine.worked + life;
      this.renewed();
    }
  }

  fail(): void {
    const { spare, crew, fate } = this.rules;
    this.broken = true;
    this.machine.stop(fate, false);
    if (spare === null) return crew.call(this);
    spare.replace();
  }

  /** The spare is there. */
  supplied(): void {
    this.rules.crew.call(this);
  }

  /** Whether its piece is in place and whole. */
  get isWhole(): boolean {
    return !this.broken;
  }

  /** Lets its piece be taken out for another machine, which stops this one, and says what life is left in it, s as designed. */
  give(): number {
    const { fate, counted } = this.rules;
    this.broken = true;
    this.refits = true;
    this.machine.stop(fate, false);
    const left = counted === 'clock' ? this.failsAt - this.calendar.now : this.dueAt - this.machine.worked;
    this.lives++;
    this.dueAt = Number.POSITIVE_INFINITY;
    this.renewed();
    return Math.max(0, left) * this.pace;
  }

  /**
   * Lets its life run so many times as fast as designed from now on, what is left of it included, and its repairs that
   * begin from now on take so many times as long.
   */
  worsen(pace: number, repairs: number): void {
    this.repairs = repairs;
    if (pace === this.pace) return;
    this.machine.reconsider(() => {
      const longer = this.pace / pace;
      this.pace = pace;
      if (this.broken) return;
      const { now } = this.calendar;
      if (this.rules.counted === 'clock') {
        this.failsAt = now + (this.failsAt - now) * longer;
        this.calendar.schedule(this.failsAt, this.me, FAIL, ++this.lives);
      } else {
        const { worked } = this.machine;
        this.dueAt = worked + Math.max(0, this.dueAt - worked) * longer;
        this.renewed();
      }
    });
  }

  /** Its repair will put in a piece with so much life left, s as designed. */
  willLive(left: number): void {
    this.lifeLeft = left;
  }

  attended(): void {
    this.machine.attend();
    const { repair, refit } = this.rules;
    const takes = this.refits ? refit() : repair();
    this.calendar.schedule(this.calendar.now + takes * this.repairs, this.me, REPAIRED, 0);
  }

  happen(code: number, life: number): void {
    if (code === FAIL) {
      if (life === this.lives) this.fail();
      return;
    }
    this.broken = false;
    this.refits = false;
    this.renew();
    this.rules.onDone?.();
    this.rules.crew.release(this);
    // Before it goes on: it may have to give its piece away at once.
    this.rules.spare?.isBack();
    this.machine.resume();
  }
}
