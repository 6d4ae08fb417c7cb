import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Client, Service } from './crew.ts';
import type { Machine } from './machine.ts';
import type { Spare } from './spare.ts';

const FAIL = 0;
const REPAIRED = 1;

export interface BreakdownRules {
  readonly life: Sampler;
  readonly repair: Sampler;
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
  private readonly machine: Machine;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly rules: BreakdownRules;
  private readonly renewed: () => void;

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
    this.me = calendar.enter(this);
    this.rules = rules;
    this.renewed = renewed;
    if (rules.spare !== null) rules.spare.repair = this;
  }

  /** Lets its life run anew. */
  renew(): void {
    const life = this.rules.life();
    if (this.rules.counted === 'clock') this.calendar.schedule(this.calendar.now + life, this.me, FAIL, 0);
    else {
      this.dueAt = this.machine.worked + life;
      this.renewed();
    }
  }

  fail(): void {
    const { spare, crew, fate } = this.rules;
    this.machine.stop(fate, false);
    if (spare === null) return crew.call(this);
    spare.worn++;
    spare.ask();
  }

  /** The spare is there. */
  supplied(): void {
    this.rules.crew.call(this);
  }

  attended(): void {
    this.machine.attend();
    this.calendar.schedule(this.calendar.now + this.rules.repair(), this.me, REPAIRED, 0);
  }

  happen(code: number): void {
    if (code === FAIL) return this.fail();
    this.renew();
    this.rules.onDone?.();
    this.rules.crew.release(this);
    this.machine.resume();
  }
}
