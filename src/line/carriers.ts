import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { Machine, Operation } from './machine.ts';
import type { PartTable } from './part-table.ts';
import type { Consumer, Door, Place, Unloader } from './place.ts';
import { StandstillError } from './standstill.ts';

/** A station that waits in front of which parts on carriers lie until `batch` of them are there. */
interface Trap {
  readonly name: string;
  readonly inbox: { readonly count: number };
  readonly batch: number;
}

/** Carriers that circulate: each part takes one where it starts its way and gives it back at the end of it. */
export class Carriers implements Actor {
  readonly name: string;
  readonly number: number;
  /** Carriers ready where parts take them. */
  ready: number;
  /** Machines that may be waiting for one. */
  readonly consumers: Consumer[] = [];
  /** Where parts wait for more parts, all of which must come on these carriers. */
  readonly traps: Trap[] = [];
  /** Carriers needed at once where parts take them. */
  load = 1;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #parts: PartTable;
  /** Column: 1 while the part is on one. */
  readonly #on: number;
  readonly #returns: number;
  #returning = 0;

  constructor(
    {
      name,
      number,
      return: returns,
    }: { readonly name: string; readonly number: number; readonly return: number },
    calendar: Calendar,
    parts: PartTable,
  ) {
    this.name = name;
    this.number = number;
    this.ready = number;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#parts = parts;
    this.#on = parts.column(0);
    this.#returns = returns;
  }

  /** Carriers on their way back. */
  get returning(): number {
    return this.#returning;
  }

  has(row: number): boolean {
    return this.#parts.get(row, this.#on) === 1;
  }

  /** Puts the part on a carrier, or takes it off one, without counting. */
  put(row: number, on: boolean): void {
    this.#parts.set(row, this.#on, on ? 1 : 0);
  }

  /** A ready carrier takes the part. */
  take(row: number): void {
    this.ready--;
    this.put(row, true);
  }

  /** The carrier of a part goes back; the part goes on without. */
  sendBack(): void {
    this.#returning++;
    // By way of the calendar even when it takes no time: the machine that gives it back is not done yet.
    this.#calendar.schedule(this.#calendar.now + this.#returns, this.#me, 0, 0);
  }

  happen(): void {
    this.#returning--;
    this.ready++;
    for (const consumer of this.consumers) consumer.wake();
    if (this.traps.length > 0) this.refuseStandstill();
  }

  /**
   * Called where a batch stays incomplete, or a carrier came back.
   * @throws StandstillError when all carriers lie in incomplete batches, or too few are ready to fetch more parts
   */
  refuseStandstill(): void {
    if (this.#returning > 0 || this.ready >= this.load) return;
    const short = this.traps.filter(({ inbox, batch }) => inbox.count > 0 && inbox.count < batch);
    const lying = short.reduce((sum, { inbox }) => sum + inbox.count, 0);
    if (lying < this.number - this.ready) return;
    const taker = this.consumers[0]!.name;
    const waits = short.map(
      ({ name, inbox, batch }) => `"${name}" waits for ${batch} parts and has ${inbox.count}`,
    );
    throw new StandstillError(
      [`"${taker}" waits for carriers "${this.name}"`, ...waits],
      this.#calendar.now,
      'Give the line more of these carriers',
    );
  }
}

/** An operation that starts only with a carrier for each of its parts. */
export class OnCarriers implements Operation {
  readonly #carriers: Carriers;
  readonly #inner: Operation;
  readonly #parts: number;

  /** @param parts how many parts one load has */
  constructor(carriers: Carriers, inner: Operation, parts: number) {
    this.#carriers = carriers;
    this.#inner = inner;
    this.#parts = parts;
  }

  ready(machine: Machine): boolean {
    return this.#carriers.ready >= this.#parts && this.#inner.ready(machine);
  }

  begin(machine: Machine): boolean {
    if (this.#carriers.ready < this.#parts || !this.#inner.begin(machine)) return false;
    for (let i = 0; i < machine.loaded; i++) this.#carriers.take(machine.load[i]!);
    return true;
  }

  finish(machine: Machine): void {
    this.#inner.finish?.(machine);
  }
}

/** Gives the carrier back as the part enters the place behind. */
export class OffCarriers implements Place {
  readonly #carriers: Carriers;
  readonly #inner: Place;

  constructor(carriers: Carriers, inner: Place) {
    this.#carriers = carriers;
    this.#inner = inner;
  }

  accept(row: number): boolean {
    const had = this.#carriers.has(row);
    if (had) this.#carriers.put(row, false);
    if (!this.#inner.accept(row)) {
      if (had) this.#carriers.put(row, true);
      return false;
    }
    if (had) this.#carriers.sendBack();
    return true;
  }

  wait(machine: Unloader): void {
    this.#inner.wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return this.#inner.doors(row);
  }
}
