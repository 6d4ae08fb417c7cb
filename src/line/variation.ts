import type { Sampler } from '../kernel/distributions/distribution.ts';
import { MixedDraws, MixedLots } from './mixed.ts';

/** What one dimension of a material adds to its nominal, mm: a term for each lot and one for each piece. */
export class Variation {
  readonly lots: MixedLots;
  readonly pieces: MixedDraws;

  /** @param z standard normal draws for a purpose */
  constructor(lotSd: number, ownSd: number, z: (purpose: string) => Sampler) {
    this.lots = new MixedLots(lotSd, z('lot'));
    this.pieces = new MixedDraws(ownSd, z('own'));
  }

  ofLot(lot: number): number {
    return this.lots.of(lot);
  }

  /** One draw a piece. */
  ofPiece(): number {
    return this.pieces.draw();
  }
}
