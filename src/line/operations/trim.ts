import type { Feature } from '../features.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** Cuts the features made here. A second visit finds nothing left to cut. */
export class Trim extends Work {
  private readonly parts: PartTable;
  private readonly features: readonly Feature[];
  private readonly cut: number;

  constructor(time: VisitTime, next: Place, parts: PartTable, features: readonly Feature[]) {
    super(time, next);
    this.parts = parts;
    this.features = features;
    this.cut = parts.column(0);
  }

  protected override alter(row: number): void {
    if (this.parts.get(row, this.cut) === 1) return;
    this.parts.set(row, this.cut, 1);
    for (const { truth, base } of this.features)
      this.parts.set(row, truth, this.parts.get(row, truth) + base);
  }
}
