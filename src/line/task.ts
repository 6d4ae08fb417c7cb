import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Client, Service } from './crew.ts';
import type { Machine } from './machine.ts';
import type { Renewal } from './renewal.ts';
import { AWAITING_SPARE, AWAITING_TECHNICIAN } from './state.ts';

const DUE = 0;
const DONE = 1;

export interface TaskRules {
  /** What it counts until it falls due, and how much of it: cycles, worked seconds, or seconds by the clock. */
  readonly counts: 'cycles' | 'working' | 'clock';
  readonly every: Sampler;
  readonly takes: Sampler;
  /** The state that the machine is in meanwhile: SET_UP or DOWN. */
  readonly state: number;
  readonly crew: Service;
  readonly priority: number;
  /** What it takes from a stock before anybody is called; null where it takes nothing. */
  readonly renewal: Renewal | null;
  /** Called when it is done. */
  readonly onDone: (() => void) | null;
}

/** A set-up, a tool change or planned maintenance: falls due again and again and waits for the end of the cycle. */
export class Task implements Actor, Client {
  readonly name: string;
  readonly place: number;
  readonly priority: number;
  readonly machine: Machine;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #rules: TaskRules;
  #dueAt = 0;

  constructor(name: string, place: number, machine: Machine, calendar: Calendar, rules: TaskRules) {
    this.name = name;
    this.place = place;
    this.priority = rules.priority;
    this.machine = machine;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#rules = rules;
    if (rules.renewal !== null) rules.renewal.onCome = () => this.#call();
    this.#renew();
  }

  get isDue(): boolean {
    return this.#counted() >= this.#dueAt;
  }

  /** Falls due now: the machine does it when it gets there. What is under way already is not done twice. */
  fallDue(): void {
    this.#dueAt = Number.NEGATIVE_INFINITY;
  }

  /** The machine is empty and stays so until this is done. */
  start(): void {
    const { renewal } = this.#rules;
    if (renewal === null || renewal.take()) this.#call();
    else this.machine.meanwhile(AWAITING_SPARE);
  }

  attended(): void {
    this.machine.meanwhile(this.#rules.state);
    this.#calendar.schedule(this.#calendar.now + this.#rules.takes(), this.#me, DONE, 0);
  }

  happen(code: number): void {
    // An idle machine does it at once; any other when it gets there.
    if (code === DUE) return this.machine.wake();
    this.#renew();
    this.#rules.renewal?.held.remove();
    this.#rules.onDone?.();
    this.#rules.crew.release(this);
    this.machine.prepared();
  }

  #call(): void {
    this.machine.meanwhile(AWAITING_TECHNICIAN);
    this.#rules.crew.call(this);
  }

  #counted(): number {
    if (this.#rules.counts === 'cycles') return this.machine.finishedCycles;
    return this.#rules.counts === 'working' ? this.machine.worked : this.#calendar.now;
  }

  #renew(): void {
    this.#dueAt = this.#counted() + this.#rules.every();
    if (this.#rules.counts === 'clock') this.#calendar.schedule(this.#dueAt, this.#me, DUE, 0);
  }
}
