import type { Consumer, Place, Unloader } from './place.ts';

/**
 * Places for parts in front of a station, first in first out unless the station picks. With capacity 0 a part
 * is handed over only while the station can start on it at once.
 */
export class Buffer implements Place {
  readonly consumer: Consumer;
  readonly capacity: number;
  count = 0;
  #rows = new Int32Array(16);
  #head = 0;
  #waiting: Unloader[] = [];

  constructor(consumer: Consumer, capacity: number) {
    this.consumer = consumer;
    this.capacity = capacity;
  }

  /** Whether a part may enter now. */
  get open(): boolean {
    if (this.count < this.capacity) return true;
    return this.capacity === 0 && this.count === 0 && this.consumer.couldStart;
  }

  accept(row: number): boolean {
    if (!this.open) return false;
    if (this.count === this.#rows.length) this.#grow();
    this.#rows[(this.#head + this.count) & (this.#rows.length - 1)] = row;
    this.count++;
    this.consumer.wake();
    return true;
  }

  wait(station: Unloader): void {
    this.#waiting.push(station);
  }

  /** The part at place `i`, 0 being the oldest. */
  peek(i: number): number {
    return this.#rows[(this.#head + i) & (this.#rows.length - 1)]!;
  }

  /** Takes out the part at place `i`. The station calls `freed` once it has changed its state. */
  take(i: number): number {
    const mask = this.#rows.length - 1;
    const row = this.peek(i);
    for (let k = i; k > 0; k--) this.#rows[(this.#head + k) & mask] = this.peek(k - 1);
    this.#head = (this.#head + 1) & mask;
    this.count--;
    return row;
  }

  /** Lets the stations that wait for room unload, longest waiting first. */
  freed(): void {
    while (this.#waiting.length > 0 && this.open) this.#waiting.shift()!.unload();
  }

  #grow(): void {
    const larger = new Int32Array(2 * this.#rows.length);
    for (let i = 0; i < this.count; i++) larger[i] = this.peek(i);
    this.#rows = larger;
    this.#head = 0;
  }
}
