import type { Stock } from './stock.ts';
import type { Holding } from './supply/holding.ts';
import type { Want } from './supply/takers.ts';
import type { Variation } from './variation.ts';

/** One kind of a mate: where pieces come from, how their features are drawn, and what became of them. */
export interface MateKind {
  readonly stock: Stock;
  /** What the station waits for of it. */
  readonly want: Want;
  /** Always in the order of the mate itself, of which it may be a stand-in. */
  readonly features: readonly { readonly aim: number; readonly variation: Variation }[];
  readonly standsIn: boolean;
  /** Pieces in hand, or joined to parts that are put aside. */
  readonly held: Holding;
  /** Pieces that stayed with a part, and that were thrown away. */
  used: number;
  thrown: number;
}

/** A bought-in mate as an assembling station takes it: itself, or what stands in for it. */
export class Mate {
  /** The mate itself first. */
  readonly kinds: readonly MateKind[];
  /** What is taken now. */
  now: MateKind;

  constructor(kinds: readonly MateKind[]) {
    this.kinds = kinds;
    this.now = kinds[0]!;
  }

  /** Takes pieces of the kind at this place from now on. */
  use(place: number): void {
    this.now.stock.turn(this.now.want, true);
    this.now = this.kinds[place]!;
    this.now.stock.turn(this.now.want, false);
  }
}
