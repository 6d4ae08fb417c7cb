import { clearance, type Pair } from '../fit.ts';
import { Histogram } from '../histogram.ts';
import type { PartTable } from '../part-table.ts';

/** Counts the clearances of first attempts to assemble, pair by pair. */
export class FitHistograms {
  /** Null of a pair without room between its limits. */
  readonly pairs: readonly (Histogram | null)[];

  constructor(pairs: readonly Pair[]) {
    this.pairs = pairs.map(({ least, most }) =>
      most > least ? new Histogram({ lower: least, upper: most }) : null,
    );
  }

  see(pairs: readonly Pair[], parts: PartTable, row: number, mate: Float64Array): void {
    for (const [i, pair] of pairs.entries())
      this.pairs[i]?.add(clearance(pair, parts.get(row, pair.feature.truth), mate[pair.mate]!));
  }

  /** What is pressed was counted when it was tried. */
  pressed(): void {}
}
