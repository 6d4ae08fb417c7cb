import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** Marks a part; the mark takes when the part's luck at this station lies below the chance. */
export class Mark extends Work {
  /** Chance that a mark takes, as designed. */
  readonly usual: number;
  /** The chances that disturbances impose; the lowest holds. */
  readonly impaired = new Set<{ readonly chance: number }>();
  readonly #parts: PartTable;
  readonly #luck: number;
  readonly #marked: number;

  constructor(time: VisitTime, next: Place, parts: PartTable, luck: number, marked: number, usual: number) {
    super(time, next);
    this.#parts = parts;
    this.#luck = luck;
    this.#marked = marked;
    this.usual = usual;
  }

  protected override alter(row: number): void {
    let chance = this.usual;
    for (const it of this.impaired) chance = Math.min(chance, it.chance);
    this.#parts.set(row, this.#marked, this.#parts.get(row, this.#luck) < chance ? 1 : 0);
  }
}
