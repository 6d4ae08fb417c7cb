import type { Sampler } from '../../kernel/distributions/distribution.ts';

/** How long lots keep, s: drawn in the order of their numbers, so that a lot's does not depend on when it comes. */
export class ShelfLife {
  private readonly drawn: number[] = [];
  private readonly life: Sampler;

  constructor(life: Sampler) {
    this.life = life;
  }

  ofLot(lot: number): number {
    while (this.drawn.length <= lot) this.drawn.push(this.life());
    return this.drawn[lot]!;
  }
}
