import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Machine } from './machine.ts';

/** How long the mates in hand at each machine of a station wait for a better part than those that are there. */
export class Patience implements Actor {
  readonly name: string;
  private readonly seconds: number;
  private readonly machines: readonly Machine[];
  private readonly calendar: Calendar;
  private readonly me: number;
  /** By machine: when it ends, s; NaN while nothing is waited for. */
  private readonly ends: Float64Array;

  constructor(station: string, seconds: number, machines: readonly Machine[], calendar: Calendar) {
    this.name = `mates that wait at ${station}`;
    this.seconds = seconds;
    this.machines = machines;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.ends = new Float64Array(machines.length).fill(Number.NaN);
  }

  /** Whether the mates go on waiting; begins to wait if they did not yet. */
  lasts({ slot }: Machine): boolean {
    const { now } = this.calendar;
    if (Number.isNaN(this.ends[slot]!)) {
      const end = now + this.seconds;
      this.ends[slot] = end;
      this.calendar.schedule(end, this.me, slot, 0);
    }
    return now < this.ends[slot]!;
  }

  /** The mates have got their part. */
  over({ slot }: Machine): void {
    this.ends[slot] = Number.NaN;
  }

  /** Nobody waits any more: whoever does later begins to wait then. */
  forget(): void {
    this.ends.fill(Number.NaN);
  }

  happen(slot: number): void {
    this.machines[slot]!.wake();
  }
}
