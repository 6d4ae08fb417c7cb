import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import { Level } from './level.ts';

/**
 * What a policy goes by of an amount that changes. It is told by way of the calendar, at the same instant: whoever
 * changes the amount is not done yet.
 */
export class Levels implements Actor {
  readonly name: string;
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
    this.onTold?.();
    tell(level.holds);
  }

  /** There is so much from now on. */
  look(amount: number): void {
    for (const level of this.levels) {
      if (!level.isCrossed(amount)) continue;
      this.calendar.schedule(this.calendar.now, this.me, 0, 0);
      return;
    }
  }

  happen(): void {
    for (const level of this.levels) if (level.isCrossed(this.amount())) level.cross();
    this.onTold?.();
  }

  /** Of a whole number of things that becomes less: while more than so many are left, none of them is crossed. */
  get alert(): number {
    return this.levels.reduce((most, { alert }) => Math.max(most, alert), 0);
  }
}
