import type { Sampler } from '../kernel/distributions/distribution.ts';

/** One draw among those that are mixed, and what part it has. */
export interface Ingredient<Of> {
  readonly draw: Of;
  readonly weight: number;
}

/** Normal draws that may lean on the latest draws of others: those must have been drawn before, for the same piece. */
export class MixedDraws {
  private latest = 0;
  private readonly sd: number;
  private readonly z: Sampler;
  private mix: readonly Ingredient<MixedDraws>[] | null = null;

  /** @param z standard normal, for this purpose alone */
  constructor(sd: number, z: Sampler) {
    this.sd = sd;
    this.z = z;
  }

  /** Lets each draw be made of these, itself among them; the squares of the weights sum to 1. */
  madeOf(mix: readonly Ingredient<MixedDraws>[]): void {
    this.mix = mix;
  }

  draw(): number {
    this.latest = this.z();
    if (this.mix === null) return this.sd * this.latest;
    let sum = 0;
    for (const { draw, weight } of this.mix) sum += weight * draw.latest;
    return this.sd * sum;
  }
}

/** Normal terms by the number of the lot, which may lean on those of others. */
export class MixedLots {
  private readonly drawn: number[] = [];
  private readonly sd: number;
  private readonly z: Sampler;
  private mix: readonly Ingredient<MixedLots>[] | null = null;

  /** @param z standard normal, for this purpose alone */
  constructor(sd: number, z: Sampler) {
    this.sd = sd;
    this.z = z;
  }

  /** Lets each term be made of these, itself among them; the squares of the weights sum to 1. */
  madeOf(mix: readonly Ingredient<MixedLots>[]): void {
    this.mix = mix;
  }

  of(lot: number): number {
    if (this.mix === null) return this.sd * this.plain(lot);
    let sum = 0;
    for (const { draw, weight } of this.mix) sum += weight * draw.plain(lot);
    return this.sd * sum;
  }

  /** Drawn in the order of lot numbers, so a lot's term does not depend on when it is first used. */
  private plain(lot: number): number {
    while (this.drawn.length <= lot) this.drawn.push(this.z());
    return this.drawn[lot]!;
  }
}
