import type { Calendar } from '../kernel/calendar.ts';

/** A deviation that grows steadily until it is cured, and then anew. */
export class Drift {
  private readonly perSecond: number;
  private readonly calendar: Calendar;
  private since = 0;

  constructor(perSecond: number, calendar: Calendar) {
    this.perSecond = perSecond;
    this.calendar = calendar;
  }

  at(now: number): number {
    return this.perSecond * (now - this.since);
  }

  cure(): void {
    this.since = this.calendar.now;
  }
}
