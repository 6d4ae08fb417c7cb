import type { Mate, MateKind } from './mate.ts';
import type { Place } from './place.ts';

/** The mates that one machine has in hand, or that were joined to a part that is put aside. */
export class Hand {
  /** True dimensions of the mates, and their readings while matching, mm. */
  readonly mate: Float64Array;
  readonly mateRead: Float64Array;
  /** Whether all are there. */
  full = false;
  tries = 0;
  /** Where the part on the machine goes without an attempt; null for an attempt. */
  destined: Place | null = null;
  private readonly mates: readonly Mate[];
  /** What is there of each mate. */
  private readonly held: (MateKind | null)[];

  constructor(mates: readonly Mate[]) {
    this.mates = mates;
    this.held = mates.map(() => null);
    const features = mates.reduce((sum, { now }) => sum + now.features.length, 0);
    this.mate = new Float64Array(features);
    this.mateRead = new Float64Array(features);
  }

  /** Takes one of each mate that is not there yet, which must be on hand; all but one, if there is one to do without. */
  fill(without = -1): void {
    let i = 0;
    for (let m = 0; m < this.mates.length; m++) {
      const { now } = this.mates[m]!;
      if (this.held[m] !== null || m === without) {
        i += now.features.length;
        continue;
      }
      const lot = now.stock.take(now.want);
      this.held[m] = now;
      for (const { aim, variation } of now.features) {
        this.mate[i++] = aim + variation.ofLot(lot) + variation.ofPiece();
      }
    }
    this.full = without < 0;
    this.tries = 0;
  }

  /** The mates stay with the part; says whether any of them stood in for another. */
  use(): boolean {
    let standsIn = false;
    for (let m = 0; m < this.held.length; m++) {
      const kind = this.held[m]!;
      kind.used++;
      if (kind.standsIn) standsIn = true;
      this.held[m] = null;
    }
    this.full = false;
    return standsIn;
  }

  /** Throws away what is there. */
  throwAway(): void {
    for (let m = 0; m < this.held.length; m++) {
      const kind = this.held[m]!;
      if (kind !== null) kind.thrown++;
      this.held[m] = null;
    }
    this.full = false;
  }

  /** Whether a piece of this kind is there. */
  holds(kind: MateKind): boolean {
    return this.held.includes(kind);
  }
}
