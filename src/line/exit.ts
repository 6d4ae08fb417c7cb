import type { Calendar } from '../kernel/calendar.ts';
import { BORN, type PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Tally } from './tally.ts';

/** A way out of the line, as good or as scrap. It always has room. */
export class Exit implements Place {
  readonly #calendar: Calendar;
  readonly #parts: PartTable;
  readonly #tally: Tally;
  readonly #good: boolean;

  constructor(calendar: Calendar, parts: PartTable, tally: Tally, good: boolean) {
    this.#calendar = calendar;
    this.#parts = parts;
    this.#tally = tally;
    this.#good = good;
  }

  accept(row: number): boolean {
    const now = this.#calendar.now;
    const tally = this.#tally;
    const stayed = now - this.#parts.get(row, BORN);
    tally.advance(now);
    tally.stayedSeconds += stayed;
    if (this.#good) {
      tally.good++;
      tally.leadSeconds += stayed;
    } else tally.scrapped++;
    this.#parts.leave(row);
    return true;
  }

  wait(): void {
    throw new Error('a way out always has room');
  }
}
