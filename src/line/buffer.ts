import type { Calendar } from '../kernel/calendar.ts';
import type { Bounds } from '../scenario/conditions/bounds.ts';
import { Levels } from './levels.ts';
import type { Consumer, Door, Place, Unloader } from './place.ts';

/**
 * Places for parts in front of a station, first in first out unless the station picks. With capacity 0 a part
 * is handed over only while the station can start on it at once.
 */
export class Buffer implements Place {
  readonly consumer: Consumer;
  /** All its places, those of a bank included. */
  capacity: number;
  /** Parts that the station may take. */
  count = 0;
  /** Places of the bank beside it, where the oldest parts stand: they make room in the buffer itself. */
  protected bank = 0;
  /** What a policy goes by; null where none does. */
  protected levels: Levels | null = null;
  private rows = new Int32Array(16);
  private head = 0;
  /** Machines that wait for room: the longest waiting, mostly the only one, and the others in their order. */
  private waiter: Unloader | null = null;
  private readonly others: Unloader[] = [];
  private readonly door: readonly Door[] = [this];

  constructor(consumer: Consumer, capacity: number) {
    this.consumer = consumer;
    this.capacity = capacity;
  }

  /** Puts a bank of so many places beside it, instead of any before. */
  setBank(places: number): void {
    this.capacity += places - this.bank;
    this.bank = places;
  }

  /** All parts in it. */
  get held(): number {
    return this.count;
  }

  /** Whether a part may enter now. */
  get open(): boolean {
    if (this.count < this.capacity) return true;
    return this.capacity === 0 && this.count === 0 && this.consumer.couldStart;
  }

  accept(row: number): boolean {
    if (this.count >= this.capacity && !this.open) return false;
    this.put(row, this.count);
    this.count++;
    this.consumer.wake();
    if (this.levels !== null) this.levels.look(this.held);
    return true;
  }

  wait(machine: Unloader): void {
    if (this.waiter === null) this.waiter = machine;
    // A machine that waits at several places may stand here from before.
    else if (this.waiter !== machine && !this.others.includes(machine)) this.others.push(machine);
  }

  doors(): readonly Door[] | null {
    return this.door;
  }

  /** Tells whether the number of parts in it is beyond its bounds: at once, and at each change from then on. */
  onLevel(calendar: Calendar, bounds: Bounds, tell: (holds: boolean) => void): void {
    this.levels ??= new Levels(`parts in front of ${this.consumer.name}`, calendar, () => this.held);
    this.levels.add(bounds, tell);
  }

  /** The part at place `i`, 0 being the oldest. */
  peek(i: number): number {
    return this.rows[(this.head + i) & (this.rows.length - 1)]!;
  }

  /** Takes out the oldest part. The machine calls `freed` once it has changed its state. */
  shift(): number {
    const rows = this.rows;
    const head = this.head;
    this.head = (head + 1) & (rows.length - 1);
    this.count--;
    if (this.levels !== null) this.levels.look(this.held);
    return rows[head]!;
  }

  /** Takes out the part at place `i`. The station calls `freed` once it has changed its state. */
  take(i: number): number {
    const mask = this.rows.length - 1;
    const row = this.peek(i);
    for (let k = i; k > 0; k--) this.rows[(this.head + k) & mask] = this.peek(k - 1);
    this.head = (this.head + 1) & mask;
    this.count--;
    if (this.levels !== null) this.levels.look(this.held);
    return row;
  }

  /** Whether machines wait for room. */
  get isAwaited(): boolean {
    return this.waiter !== null;
  }

  /** Lets the machines that wait for room unload, longest waiting first. */
  freed(): void {
    while (this.waiter !== null && this.open) {
      const machine = this.waiter;
      this.waiter = this.others.shift() ?? null;
      machine.unload();
    }
  }

  /** Writes the row behind the `held` parts that are in it. */
  protected put(row: number, held: number): void {
    if (held === this.rows.length) this.grow(held);
    this.rows[(this.head + held) & (this.rows.length - 1)] = row;
  }

  private grow(held: number): void {
    const larger = new Int32Array(2 * this.rows.length);
    for (let i = 0; i < held; i++) larger[i] = this.peek(i);
    this.rows = larger;
    this.head = 0;
  }
}
