import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { samplerOf } from '../../kernel/distributions/index.ts';
import type { Stream } from '../../kernel/streams.ts';

/**
 * Which pieces of an endless row something happens to, each with the same chance: drawn as the gaps between them, which
 * are geometric, so that piece number k has its own luck however the row is cut into deliveries.
 */
export class Rare {
  /** Pieces up to and including the next that it happens to. */
  private next: number;
  private readonly gap: Sampler;

  /** @param chance above 0, at most 1 */
  constructor(chance: number, stream: Stream) {
    this.gap = samplerOf({ distribution: 'geometric', chance, step: 1 }, stream);
    this.next = this.gap();
  }

  /** How many of the next `pieces` it happens to. */
  among(pieces: number): number {
    let found = 0;
    while (this.next <= pieces) {
      found++;
      this.next += this.gap();
    }
    this.next -= pieces;
    return found;
  }
}
