import type { Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Stock } from '../stock.ts';
import type { Want } from '../supply/takers.ts';
import type { Tally } from '../tally.ts';

/** What a source takes: its stock, or one that stands in for it. */
export interface Supply {
  readonly stock: Stock;
  /** What each machine waits for. */
  readonly wants: readonly Want[];
  /** The number of a delivery by its number in the stock. */
  readonly numberOf: (lot: number) => number;
  readonly standsIn: boolean;
  /** Pieces taken. */
  taken: number;
}

export interface SourceParts {
  readonly calendar: Calendar;
  readonly parts: PartTable;
  readonly tally: Tally;
  /** The stock itself first. */
  readonly supplies: readonly Supply[];
  readonly cycle: Sampler;
  /** Column where a part keeps its delivery; null where nobody asks. */
  readonly delivery: number | null;
}

/** Takes a piece of stock and starts one part from it. */
export class Source implements Operation {
  readonly perPiece: number;
  readonly on: SourceParts;
  private from: Supply;

  constructor(on: SourceParts, perPiece = 1) {
    this.on = on;
    this.perPiece = perPiece;
    this.from = on.supplies[0]!;
  }

  /** Pieces taken. */
  get taken(): number {
    return this.on.supplies.reduce((sum, { taken }) => sum + taken, 0);
  }

  /** Takes pieces of the supply at this place from now on. */
  use(place: number): void {
    for (const want of this.from.wants) this.from.stock.turn(want, true);
    this.from = this.on.supplies[place]!;
    for (const want of this.from.wants) this.from.stock.turn(want, false);
  }

  ready(): boolean {
    return this.from.stock.onHand > 0;
  }

  begin(machine: Machine): boolean {
    const { cycle, calendar, parts, tally } = this.on;
    const { from } = this;
    const { stock } = from;
    const want = from.wants[machine.slot]!;
    if (stock.onHand === 0) {
      stock.lack(want, 1);
      return false;
    }
    const lot = stock.take(want);
    from.taken++;
    machine.cycle = cycle();
    tally.advance(calendar.now);
    tally.started += this.perPiece;
    if (from.standsIn) tally.substituted += this.perPiece;
    for (let i = 0; i < this.perPiece; i++) machine.load[i] = parts.start(calendar.now);
    machine.loaded = this.perPiece;
    if (this.on.delivery !== null) this.remember(machine, this.on.delivery, from.numberOf(lot));
    this.shape(machine, lot);
    return true;
  }

  private remember(machine: Machine, column: number, delivery: number): void {
    for (let i = 0; i < machine.loaded; i++) this.on.parts.set(machine.load[i]!, column, delivery);
  }

  /** What the operation makes of the parts on the machine; `lot` is that of the piece. */
  protected shape(_machine: Machine, _lot: number): void {}
}
