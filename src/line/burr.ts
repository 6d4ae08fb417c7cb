import type { PartTable } from './part-table.ts';

export interface BurrRules {
  /** Height behind a new tool, and what each cut adds to it, mm. */
  readonly first: number;
  readonly grows: number;
  /** Column of what the part itself adds, mm; null when it adds nothing. */
  readonly own: number | null;
  /** The height above which a part is deburred, mm. */
  readonly most: number;
  /** What deburring adds to the designed time of the cycle, s. */
  readonly deburring: number;
}

/** The burr at the cut edges of a station's parts. One that is low enough to stay does no harm. */
export class Burr {
  readonly deburring: number;
  private readonly parts: PartTable;
  private readonly rules: BurrRules;

  constructor(parts: PartTable, rules: BurrRules) {
    this.parts = parts;
    this.rules = rules;
    this.deburring = rules.deburring;
  }

  /** Whether this part has to be deburred when a tool cuts it that has made so many cuts before. */
  isTooHigh(row: number, cuts: number): boolean {
    const { first, grows, own, most } = this.rules;
    return first + grows * cuts + (own === null ? 0 : this.parts.get(row, own)) > most;
  }
}
