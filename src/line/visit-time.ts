import type { Sampler } from '../kernel/distributions/distribution.ts';
import { fillOf, type Law, samplerOf } from '../kernel/distributions/index.ts';
import type { Streams } from '../kernel/streams.ts';
import type { PartTable } from './part-table.ts';

/** The time a part takes at one station: its own for the first visit, drawn afresh for later ones. */
export class VisitTime {
  private readonly parts: PartTable;
  private readonly column: number;
  private readonly again: Sampler;

  constructor(station: string, law: Law, parts: PartTable, streams: Streams) {
    this.parts = parts;
    this.column = parts.luck(fillOf(law, streams.of(`station/${station}/cycle`)));
    this.again = samplerOf(law, streams.of(`station/${station}/cycle/again`));
  }

  /** Seconds; each call is one visit. */
  of(row: number): number {
    const time = this.parts.get(row, this.column);
    if (Number.isNaN(time)) return this.again();
    this.parts.set(row, this.column, Number.NaN);
    return time;
  }
}
