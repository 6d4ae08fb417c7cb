import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { CalendarSpec } from '../scenario/calendars.ts';
import { WEEK, weekOf } from './week.ts';

const ON = 0;
const OFF = 1;

/** Whoever works by a calendar. */
export interface ShiftMember {
  goOffShift(): void;
  comeOnShift(): void;
}

/** A calendar at work: sends its members off and on, week after week. */
export class Shifts implements Actor {
  readonly name: string;
  readonly members: ShiftMember[] = [];
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #spec: CalendarSpec;

  constructor(spec: CalendarSpec, calendar: Calendar) {
    this.name = spec.name;
    this.#spec = spec;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
  }

  /** Whether the week begins with work. */
  get startsOn(): boolean {
    return weekOf(this.#spec)[0]!.from === 0;
  }

  /** The week begins. */
  open(): void {
    const spans = weekOf(this.#spec);
    // Work that ends with the week goes on where the next one begins with work.
    const through = spans[0]!.from === 0 && spans.at(-1)!.to === WEEK;
    if (spans[0]!.from > 0) this.#tell(OFF);
    for (const { from, to } of spans) {
      if (!(through && to === WEEK)) this.#calendar.schedule(to, this.#me, OFF, 0);
      if (!(through && from === 0)) this.#calendar.schedule(from > 0 ? from : WEEK, this.#me, ON, 0);
    }
  }

  happen(code: number): void {
    this.#calendar.schedule(this.#calendar.now + WEEK, this.#me, code, 0);
    this.#tell(code);
  }

  #tell(code: number): void {
    for (const member of this.members) {
      if (code === ON) member.comeOnShift();
      else member.goOffShift();
    }
  }
}
