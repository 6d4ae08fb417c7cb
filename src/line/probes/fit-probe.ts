import { clearance, type Pair } from '../fit.ts';
import type { PartTable } from '../part-table.ts';
import { Sums } from './sums.ts';

/** What was seen of one mating pair. */
export class PairSeen {
  readonly gap = new Sums();
  tight = 0;
  loose = 0;
}

/** Looks at attempts to assemble, pair by pair. */
export class FitProbe {
  attempts = 0;
  /** Attempts at which all pairs fitted. */
  fits = 0;
  /** Attempts that were pressed together: sound, and spoiled by it. */
  forced = 0;
  damaged = 0;
  /** Attempts at which a pair was too loose. */
  private loose = 0;
  readonly pairs: readonly PairSeen[];

  constructor(pairs: number) {
    this.pairs = Array.from({ length: pairs }, () => new PairSeen());
  }

  see(pairs: readonly Pair[], parts: PartTable, row: number, mate: Float64Array): void {
    let fits = true;
    let loose = false;
    for (const [i, pair] of pairs.entries()) {
      const gap = clearance(pair, parts.get(row, pair.feature.truth), mate[pair.mate]!);
      const seen = this.pairs[i]!;
      seen.gap.add(gap);
      if (gap < pair.least) seen.tight++;
      if (gap > pair.most) {
        seen.loose++;
        loose = true;
      }
      if (gap < pair.least || gap > pair.most) fits = false;
    }
    this.attempts++;
    if (fits) this.fits++;
    if (loose) this.loose++;
  }

  /** Attempts at which nothing was too loose, but something so tight that nothing could be done. */
  get tooTight(): number {
    return this.attempts - this.fits - this.loose - this.forced - this.damaged;
  }

  pressed(spoilt: boolean): void {
    if (spoilt) this.damaged++;
    else this.forced++;
  }
}
