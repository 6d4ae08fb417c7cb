import type { Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Door, Place } from '../place.ts';
import type { Tally } from '../tally.ts';

export interface ArriveParts {
  readonly calendar: Calendar;
  readonly parts: PartTable;
  readonly tally: Tally;
  readonly between: Sampler;
}

/** Parts come in by themselves: each cycle is the time to the next arrival, and the part begins with its end. */
export class Arrive implements Operation {
  /** Parts that came, those turned away included. */
  came = 0;
  readonly #on: ArriveParts;

  constructor(on: ArriveParts) {
    this.#on = on;
  }

  ready(): boolean {
    return true;
  }

  begin(machine: Machine): boolean {
    machine.loaded = 0;
    machine.cycle = this.#on.between();
    return true;
  }

  finish(machine: Machine): void {
    const { calendar, parts, tally } = this.#on;
    tally.advance(calendar.now);
    tally.started++;
    this.came++;
    machine.load[0] = parts.start(calendar.now);
    machine.loaded = 1;
  }
}

/** Turns a part away when there is no room for it behind. */
export class OrAway implements Place {
  readonly #inner: Place;
  readonly #away: Place;

  constructor(inner: Place, away: Place) {
    this.#inner = inner;
    this.#away = away;
  }

  accept(row: number): boolean {
    return this.#inner.accept(row) || this.#away.accept(row);
  }

  wait(): void {
    throw new Error('who is turned away does not wait');
  }

  doors(): readonly Door[] | null {
    return null;
  }
}
