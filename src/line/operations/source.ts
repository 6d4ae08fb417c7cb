import type { Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Stock, Want } from '../stock.ts';
import type { Tally } from '../tally.ts';

export interface SourceParts {
  readonly calendar: Calendar;
  readonly parts: PartTable;
  readonly tally: Tally;
  readonly stock: Stock;
  /** What each machine waits for. */
  readonly wants: readonly Want[];
  readonly cycle: Sampler;
  /** Where a part keeps its delivery, and the number of one there by its number in the stock; null where nobody asks. */
  readonly delivery: { readonly column: number; readonly numberOf: (lot: number) => number } | null;
}

/** Takes a piece of stock and starts one part from it. */
export class Source implements Operation {
  /** Pieces taken. */
  taken = 0;
  readonly perPiece: number;
  protected readonly on: SourceParts;

  constructor(on: SourceParts, perPiece = 1) {
    this.on = on;
    this.perPiece = perPiece;
  }

  ready(): boolean {
    return this.on.stock.onHand > 0;
  }

  begin(machine: Machine): boolean {
    const { stock, wants, cycle, calendar, parts, tally } = this.on;
    const want = wants[machine.slot]!;
    if (stock.onHand === 0) {
      stock.lack(want, 1);
      return false;
    }
    const lot = stock.take(want);
    this.taken++;
    machine.cycle = cycle();
    tally.advance(calendar.now);
    tally.started += this.perPiece;
    for (let i = 0; i < this.perPiece; i++) machine.load[i] = parts.start(calendar.now);
    machine.loaded = this.perPiece;
    if (this.on.delivery !== null) this.remember(machine, this.on.delivery, lot);
    this.shape(machine, lot);
    return true;
  }

  private remember(
    machine: Machine,
    { column, numberOf }: NonNullable<SourceParts['delivery']>,
    lot: number,
  ): void {
    for (let i = 0; i < machine.loaded; i++) this.on.parts.set(machine.load[i]!, column, numberOf(lot));
  }

  /** What the operation makes of the parts on the machine; `lot` is that of the piece. */
  protected shape(_machine: Machine, _lot: number): void {}
}
