import type { Actor, Calendar } from '../kernel/calendar.ts';
import { Buffer } from './buffer.ts';
import type { Consumer, Door, Unloader } from './place.ts';

const ARRIVE = 0;
const OPEN = 1;

/**
 * A buffer that parts travel through: the station may take a part `transit` seconds after it entered. Parts enter
 * at least `spacing` seconds apart and queue up at the end, so the belt holds as many as it has places.
 */
export class Conveyor extends Buffer implements Actor {
  readonly name: string;
  private readonly calendar: Calendar;
  private readonly me: number;
  private readonly transit: number;
  private readonly spacing: number;
  private travelling = 0;
  private clearAt = 0;
  /** Those that began to wait while the belt had places left and would have opened by itself. */
  private hopeful: Unloader[] = [];

  constructor(
    consumer: Consumer,
    capacity: number,
    calendar: Calendar,
    { transit, spacing }: { readonly transit: number; readonly spacing: number },
  ) {
    super(consumer, capacity);
    this.name = `conveyor to ${consumer.name}`;
    this.calendar = calendar;
    this.me = calendar.enter(this);
    this.transit = transit;
    this.spacing = spacing;
  }

  override get held(): number {
    return this.count + this.travelling;
  }

  override get open(): boolean {
    return this.hasPlace && this.calendar.now >= this.clearAt;
  }

  override accept(row: number): boolean {
    if (!this.open) return false;
    const { now } = this.calendar;
    this.put(row, this.held);
    this.travelling++;
    if (this.levels !== null) this.levels.look(this.held);
    this.calendar.schedule(now + this.transit, this.me, ARRIVE, 0);
    if (this.spacing > 0) {
      this.clearAt = now + this.spacing;
      this.calendar.schedule(this.clearAt, this.me, OPEN, 0);
    }
    return true;
  }

  override wait(machine: Unloader): void {
    super.wait(machine);
    if (this.opensItself && !this.hopeful.includes(machine)) this.hopeful.push(machine);
  }

  /** The belt moves on by itself while it is not full, or has a bank with room at its end. */
  override doors(): readonly Door[] | null {
    return this.opensItself ? null : [this];
  }

  happen(code: number): void {
    if (code === OPEN) return this.clear();
    this.travelling--;
    this.count++;
    this.consumer.wake();
    // One that went on into the bank has left the belt.
    if (this.bank > 0) this.clear();
  }

  /** Whether the belt itself, without the bank, has a place. */
  private get hasPlace(): boolean {
    return this.held - Math.min(this.count, this.bank) < this.capacity - this.bank;
  }

  private get opensItself(): boolean {
    return this.hasPlace || this.count < this.bank;
  }

  /** The last part is out of the way of the next. */
  private clear(): void {
    this.freed();
    if (this.opensItself || this.hopeful.length === 0) return;
    // Another took the last place on the belt or in the bank, so now they wait for the station behind, and a circle may have closed.
    const waiting = this.hopeful;
    this.hopeful = [];
    for (const machine of waiting) machine.unload();
  }
}
