import type { PartTable } from './part-table.ts';

/** Marks parts with a flaw that nobody sees at once: such a part never fits, and is off limits where gauged. */
export class Flaw {
  private readonly parts: PartTable;
  private readonly column: number;

  constructor(parts: PartTable) {
    this.parts = parts;
    this.column = parts.column(0);
  }

  put(row: number): void {
    this.parts.set(row, this.column, 1);
  }

  isAt(row: number): boolean {
    return this.parts.get(row, this.column) === 1;
  }
}
