import type { Place } from './place.ts';
import type { Stock, Want } from './stock.ts';
import type { Variation } from './variation.ts';

/** A bought-in mate: where it comes from and how its features are drawn. */
export interface Mate {
  readonly stock: Stock;
  /** What the station waits for of it. */
  readonly want: Want;
  readonly features: readonly { readonly aim: number; readonly variation: Variation }[];
}

/** The mates that one machine has in hand. */
export class Hand {
  /** True dimensions of the mates, and their readings while matching, mm. */
  readonly mate: Float64Array;
  readonly mateRead: Float64Array;
  full = false;
  tries = 0;
  /** Where the part on the machine goes without an attempt; null for an attempt. */
  destined: Place | null = null;
  private readonly mates: readonly Mate[];

  constructor(mates: readonly Mate[]) {
    this.mates = mates;
    const features = mates.reduce((sum, mate) => sum + mate.features.length, 0);
    this.mate = new Float64Array(features);
    this.mateRead = new Float64Array(features);
  }

  /** Takes one of each mate, which must be on hand. */
  fill(): void {
    let i = 0;
    for (const { stock, want, features } of this.mates) {
      const lot = stock.take(want);
      for (const { aim, variation } of features) {
        this.mate[i++] = aim + variation.ofLot(lot) + variation.ofPiece();
      }
    }
    this.full = true;
    this.tries = 0;
  }
}
