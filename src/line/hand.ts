import type { MateKind } from './mate.ts';
import type { Mates } from './mates.ts';
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
  private readonly mates: Mates;
  /** What is there of each mate, and whether those are that are taken as one. */
  private readonly held: (MateKind | null)[];
  private kit = false;

  constructor(mates: Mates) {
    this.mates = mates;
    this.held = mates.all.map(() => null);
    this.mate = new Float64Array(mates.features);
    this.mateRead = new Float64Array(mates.features);
  }

  /** Takes one of each mate that is not there yet, which must be on hand; all but one, if there is one to do without. */
  fill(without = -1): void {
    const { loose, kit } = this.mates;
    for (const { mate, place, feature } of loose) {
      if (this.held[place] !== null || place === without) continue;
      const { now } = mate;
      const lot = now.stock.take(now.want);
      now.held.add();
      this.held[place] = now;
      let i = feature;
      for (const { aim, variation } of now.features) {
        this.mate[i++] = aim + variation.ofLot(lot) + variation.ofPiece();
      }
    }
    if (kit !== null && !this.kit) {
      kit.take();
      this.kit = true;
    }
    this.full = without < 0;
    this.tries = 0;
  }

  /** The mates stay with the part; says whether any of them stood in for another. */
  use(): boolean {
    let standsIn = false;
    for (const { place } of this.mates.loose) {
      const kind = this.held[place]!;
      kind.used++;
      kind.held.remove();
      if (kind.standsIn) standsIn = true;
      this.held[place] = null;
    }
    if (this.kit) this.mates.kit!.use();
    this.kit = false;
    this.full = false;
    return standsIn;
  }

  /** Throws away what is there. */
  throwAway(): void {
    for (const { place } of this.mates.loose) {
      const kind = this.held[place]!;
      if (kind !== null) {
        kind.thrown++;
        kind.held.remove();
      }
      this.held[place] = null;
    }
    if (this.kit) this.mates.kit!.throwAway();
    this.kit = false;
    this.full = false;
  }

  /** Whether a piece of this kind is there. */
  holds(kind: MateKind): boolean {
    return this.held.includes(kind) || (this.kit && this.mates.kit!.kinds.includes(kind));
  }

  /** Holds by themselves those that were taken as one: to be called before they are no more. */
  scatter(): void {
    if (!this.kit) return;
    for (const [place, { now }] of this.mates.all.entries())
      if (this.mates.kit!.kinds.includes(now)) this.held[place] = now;
    this.kit = false;
  }
}
