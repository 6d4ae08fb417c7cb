import type { Feature } from '../features.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** Cuts the features made here. A second visit finds nothing left to cut. */
export class Trim extends Work {
  private readonly parts: PartTable;
  private readonly features: readonly Feature[];
  private readonly cut: number;

  constructor(time: VisitTime, parts: PartTable, features: readonly Feature[]) {
    super(time);
    this.parts = parts;
    this.features = features;
    this.cut = parts.column(0);
  }

  finish(machine: Machine): void {
    const row = machine.load[0]!;
    if (this.parts.get(row, this.cut) === 1) return;
    this.parts.set(row, this.cut, 1);
    for (const { truth, base } of this.features)
      this.parts.set(row, truth, this.parts.get(row, truth) + base);
  }
}
