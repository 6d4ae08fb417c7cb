import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Client, Service } from './crew.ts';
import type { Machine } from './machine.ts';
import { AWAITING_HANDLING, WORKING } from './state.ts';

/** The load is on. */
const ON = 0;
/** The load is off. */
const OFF = 1;

export interface HandlingRules {
  /** Seconds to put a load on, and to take it off when the cycle is over. */
  readonly load: number;
  readonly unload: number;
  /** Who does it. */
  readonly crew: Service;
  readonly priority: number;
}

/** Puts loads on a machine and takes them off. Once it has begun, nothing interrupts it. */
export class Handling implements Actor, Client {
  readonly name: string;
  readonly place: number;
  readonly priority: number;
  readonly load: number;
  readonly unload: number;
  readonly machine: Machine;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #crew: Service;
  #doing = ON;

  constructor(place: number, machine: Machine, calendar: Calendar, rules: HandlingRules) {
    this.name = `handling at ${machine.name}`;
    this.place = place;
    this.priority = rules.priority;
    this.load = rules.load;
    this.unload = rules.unload;
    this.machine = machine;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#crew = rules.crew;
  }

  putOn(): void {
    this.#ask(ON);
  }

  takeOff(): void {
    this.#ask(OFF);
  }

  attended(): void {
    this.machine.meanwhile(WORKING);
    const takes = this.#doing === ON ? this.load : this.unload;
    this.#calendar.schedule(this.#calendar.now + takes, this.#me, this.#doing, 0);
  }

  happen(code: number): void {
    this.#crew.release(this);
    if (code === ON) this.machine.handledIn();
    else this.machine.handledOut();
  }

  #ask(what: number): void {
    this.#doing = what;
    this.machine.meanwhile(AWAITING_HANDLING);
    this.#crew.call(this);
  }
}
