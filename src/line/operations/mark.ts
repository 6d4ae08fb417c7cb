import type { Stream } from '../../kernel/streams.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** Where the luck of a part's mark and whether it took stand, and draws for later visits. */
export interface MarkColumns {
  readonly luck: number;
  readonly again: Stream;
  readonly marked: number;
}

/** Marks a part; the mark takes when the part's luck at this station lies below the chance. */
export class Mark extends Work {
  /** Chance that a mark takes, as designed. */
  readonly usual: number;
  /** The chances that disturbances impose; the lowest holds. */
  readonly impaired = new Set<{ readonly chance: number }>();
  private readonly parts: PartTable;
  private readonly columns: MarkColumns;

  constructor(time: VisitTime, parts: PartTable, columns: MarkColumns, usual: number) {
    super(time);
    this.parts = parts;
    this.columns = columns;
    this.usual = usual;
  }

  finish(machine: Machine): void {
    const row = machine.load[0]!;
    let chance = this.usual;
    for (const it of this.impaired) chance = Math.min(chance, it.chance);
    const { luck, again, marked } = this.columns;
    this.parts.set(row, marked, this.parts.get(row, luck) < chance ? 1 : 0);
    this.parts.set(row, luck, again());
  }
}
