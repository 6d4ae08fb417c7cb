import type { Sampler } from '../kernel/distributions/distribution.ts';
import { MixedDraws, MixedLots } from './mixed.ts';

/** What one dimension of a material adds to its nominal, mm: a term for each lot and one for each piece. */
export class Variation {
  readonly lots: MixedLots;
  readonly pieces: MixedDraws;
  /** How much larger it is in lots that came while a disturbance lasted, by their numbers; null where none did. */
  private off: Map<number, number> | null = null;

  /** @param z standard normal draws for a purpose */
  constructor(lotSd: number, ownSd: number, z: (purpose: string) => Sampler) {
    this.lots = new MixedLots(lotSd, z('lot'));
    this.pieces = new MixedDraws(ownSd, z('own'));
  }

  ofLot(lot: number): number {
    const usual = this.lots.of(lot);
    return this.off === null ? usual : usual + (this.off.get(lot) ?? 0);
  }

  /** Makes all pieces of a lot so much larger. */
  shiftLot(lot: number, by: number): void {
    this.off ??= new Map();
    this.off.set(lot, (this.off.get(lot) ?? 0) + by);
  }

  /** One draw a piece. */
  ofPiece(): number {
    return this.pieces.draw();
  }
}
