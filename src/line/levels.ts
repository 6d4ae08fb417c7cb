import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import { Level } from './level.ts';

/**
 * What a policy goes by of a whole number of things that changes. It is told by way of the calendar, at the same instant: whoever
 * changes the amount is not done yet.
 */
export class Levels implements Actor {
  readonly name: string;
  /** None is crossed while there are more than `least` and fewer than `most`. */
  least = Number.NEGATIVE_INFINITY;
  private most = Number.POSITIVE_INFINITY;
  private readonly levels: Level[] = [];
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly amount: () => number;
  private readonly onTold: (() => void) | undefined;

  /** @param onTold called when it was told of changes */
  constructor(name: string, calendar: Calendar, amount: () => number, onTold?: () => void) {
    this.name = name;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.amount = amount;
    this.onTold = onTold;
  }

  /** Tells whether it is beyond its bounds: at once, and at each change from then on. */
  add(bounds: Bounds, tell: (holds: boolean) => void): void {
    const level = new Level(bounds, this.amount(), tell);
    this.levels.push(level);
    this.narrow();
    tell(level.holds);
  }

  /** There is so much from now on. */
  look(amount: number): void {
    if (amount <= this.least || amount >= this.most) this.calendar.schedule(this.calendar.now, this.me, 0, 0);
  }

  happen(): void {
    for (const level of this.levels) if (level.isCrossed(this.amount())) level.cross();
    this.narrow();
    // Whoever was told may have changed it at once, such as by pieces of a reserve.
    this.look(this.amount());
  }

  private narrow(): void {
    this.least = Number.NEGATIVE_INFINITY;
    this.most = Number.POSITIVE_INFINITY;
    for (const { least, most } of this.levels) {
      this.least = Math.max(this.least, least);
      this.most = Math.min(this.most, most);
    }
    this.onTold?.();
  }
}
