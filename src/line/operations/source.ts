import type { Calendar } from '../../kernel/calendar.ts';
import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { Operation, Station } from '../station.ts';
import type { Stock } from '../stock.ts';
import type { Tally } from '../tally.ts';

export interface SourceParts {
  readonly calendar: Calendar;
  readonly parts: PartTable;
  readonly tally: Tally;
  readonly stock: Stock;
  readonly cycle: Sampler;
  readonly next: Place;
}

/** Takes a piece of stock and starts one part from it. */
export class Source implements Operation {
  protected readonly on: SourceParts;
  protected readonly perPiece: number;

  constructor(on: SourceParts, perPiece = 1) {
    this.on = on;
    this.perPiece = perPiece;
  }

  get ready(): boolean {
    return this.on.stock.onHand > 0;
  }

  begin(station: Station): boolean {
    const { stock, cycle, calendar, parts, tally } = this.on;
    if (stock.onHand === 0) return false;
    const lot = stock.take();
    station.cycle = cycle();
    tally.advance(calendar.now);
    tally.started += this.perPiece;
    for (let i = 0; i < this.perPiece; i++) station.load[i] = parts.start(calendar.now);
    station.loaded = this.perPiece;
    this.shape(station, lot);
    return true;
  }

  finish(station: Station): void {
    for (let i = 0; i < this.perPiece; i++) station.outlets[i] = this.on.next;
  }

  /** What the operation makes of the parts on the station; `lot` is that of the piece. */
  protected shape(_station: Station, _lot: number): void {}
}
