import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Machine } from './machine.ts';
import { SET_UP } from './state.ts';

/** A heated machine that idled for longer than `after` seconds warms up, its load in place, before the next cycle. */
export class WarmUp implements Actor {
  readonly name: string;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #machine: Machine;
  readonly #after: number;
  readonly #takes: Sampler;

  constructor(machine: Machine, calendar: Calendar, { after, takes }: { after: number; takes: Sampler }) {
    this.name = `warm-up of ${machine.name}`;
    this.#machine = machine;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#after = after;
    this.#takes = takes;
  }

  get isNeeded(): boolean {
    return this.#calendar.now - this.#machine.lastWorked > this.#after;
  }

  start(): void {
    this.#machine.meanwhile(SET_UP);
    this.#calendar.schedule(this.#calendar.now + this.#takes(), this.#me, 0, 0);
  }

  happen(): void {
    this.#machine.warm();
  }
}
