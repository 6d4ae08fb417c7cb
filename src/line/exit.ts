import type { Calendar } from '../kernel/calendar.ts';
import { BORN, type PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Tally } from './tally.ts';

/** Told of a part that leaves: its row, how long it stayed (s), and the time (s). */
export type LeavingListener = (row: number, stayed: number, now: number) => void;

/** A way out of the line: as good, as scrap, or turned away at the entrance. It always has room. */
export class Exit implements Place {
  readonly leaving: LeavingListener[] = [];
  private readonly calendar: Calendar;
  private readonly parts: PartTable;
  private readonly tally: Tally;
  private readonly as: 'good' | 'scrapped' | 'turnedAway';

  constructor(calendar: Calendar, parts: PartTable, tally: Tally, as: 'good' | 'scrapped' | 'turnedAway') {
    this.calendar = calendar;
    this.parts = parts;
    this.tally = tally;
    this.as = as;
  }

  accept(row: number): boolean {
    const now = this.calendar.now;
    const tally = this.tally;
    const stayed = now - this.parts.get(row, BORN);
    tally.advance(now);
    tally.stayedSeconds += stayed;
    if (this.as === 'good') {
      tally.good++;
      tally.leadSeconds += stayed;
    } else if (this.as === 'scrapped') tally.scrapped++;
    else tally.turnedAway++;
    if (this.leaving.length > 0) for (const tell of this.leaving) tell(row, stayed, now);
    this.parts.leave(row);
    return true;
  }

  wait(): void {
    throw new Error('a way out always has room');
  }

  doors(): null {
    return null;
  }
}
