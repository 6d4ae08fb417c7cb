import type { Actor, Calendar } from '../kernel/calendar.ts';
import { Buffer } from './buffer.ts';
import type { Consumer, Door, Unloader } from './place.ts';
import { Upsets } from './upset.ts';

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
  /** How fast the belt moves, in shares of its usual speed. */
  private speed = 1;
  /** How far the belt had moved, in seconds at its usual speed, at its last change of speed, and when that was, s. */
  private moved = 0;
  private changed = 0;
  /** Which of the plans of what happens on the belt holds. */
  private plan = 0;
  /** How far the belt has moved when each part arrives; null where nothing disturbs the belt. And when its end is clear. */
  private ends: number[] | null = null;
  private clearEnd = 0;
  private upsets: Upsets | null = null;
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
    if (this.ends !== null) this.enterBelt(this.ends);
    else {
      this.calendar.schedule(now + this.transit, this.me, ARRIVE, 0);
      if (this.spacing > 0) {
        this.clearAt = now + this.spacing;
        this.calendar.schedule(this.clearAt, this.me, OPEN, 0);
      }
    }
    return true;
  }

  /** Lets the speed of the belt be changed later, by what is entered in what comes back. Before the first part comes. */
  unsettle(): Upsets {
    this.ends ??= [];
    this.upsets ??= new Upsets(this.calendar);
    return this.upsets;
  }

  /** Moves at this share of its usual speed from now on; at 0 it stands. */
  move(speed: number): void {
    this.moved = this.way;
    this.changed = this.calendar.now;
    this.speed = speed;
    this.plan++;
    for (const end of this.ends!) this.expect(ARRIVE, end);
    if (this.clearAt >= this.calendar.now) this.clearAt = this.expect(OPEN, this.clearEnd);
  }

  override wait(machine: Unloader): void {
    super.wait(machine);
    if (this.opensItself && !this.hopeful.includes(machine)) this.hopeful.push(machine);
  }

  /** The belt moves on by itself while it is not full, or has a bank with room at its end. */
  override doors(): readonly Door[] | null {
    return this.opensItself ? null : [this];
  }

  happen(code: number, plan: number): void {
    if (plan !== this.plan) return;
    if (code === OPEN) return this.clear();
    if (this.ends !== null) this.ends.shift();
    this.travelling--;
    this.count++;
    this.consumer.wake();
    // One that went on into the bank has left the belt.
    if (this.bank > 0) this.clear();
  }

  /** How far the belt has moved. */
  private get way(): number {
    return this.moved + this.speed * (this.calendar.now - this.changed);
  }

  private enterBelt(ends: number[]): void {
    const { way } = this;
    ends.push(way + this.transit);
    this.expect(ARRIVE, way + this.transit);
    if (this.spacing === 0) return;
    this.clearEnd = way + this.spacing;
    this.clearAt = this.expect(OPEN, this.clearEnd);
  }

  /** Plans what happens when the belt has moved so far, and says when that is, s: never while it stands. */
  private expect(code: number, end: number): number {
    const left = Math.max(0, end - this.way);
    if (left > 0 && this.speed === 0) return Number.POSITIVE_INFINITY;
    const at = this.calendar.now + (left > 0 ? left / this.speed : 0);
    this.calendar.schedule(at, this.me, code, this.plan);
    return at;
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
