import type { PartTable } from '../part-table.ts';
import type { Place, Unloader } from '../place.ts';

/** A part that went past the station. */
export const PAST = 1;
/** One that is sent through it in the end. */
export const LAST = 2;

/** What a station owes parts that went past it: they are collected before they leave and sent through it, the oldest first. */
export class Owed implements Unloader {
  /** Column: PAST, LAST, or 0 for a part that is owed nothing. */
  readonly column: number;
  /** Parts sent through the station in the end. */
  madeUp = 0;
  /** Whether parts are kept here for now. */
  keeps = false;
  private readonly rows: number[] = [];
  private readonly parts: PartTable;
  private readonly inbox: Place;

  /** @param inbox of the station */
  constructor(parts: PartTable, inbox: Place) {
    this.column = parts.column(0);
    this.parts = parts;
    this.inbox = inbox;
  }

  /** Parts that are collected now. */
  get count(): number {
    return this.rows.length;
  }

  of(row: number): number {
    return this.parts.get(row, this.column);
  }

  set(row: number, to: number): void {
    this.parts.set(row, this.column, to);
  }

  /** Takes in a part that would leave; there is always room. */
  collect(row: number): void {
    this.set(row, LAST);
    this.rows.push(row);
    this.unload();
  }

  /** Sends them through the station as far as it has room for them. */
  unload(): void {
    while (!this.keeps && this.rows.length > 0) {
      const row = this.rows.shift()!;
      if (!this.inbox.accept(row)) {
        this.rows.unshift(row);
        this.inbox.wait(this);
        return;
      }
      this.madeUp++;
    }
  }
}
