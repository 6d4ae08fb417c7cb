/** Pieces taken from a stock and not used yet: in hand, or put aside for a repair. */
export class Holding {
  pieces = 0;
  private readonly clock: { readonly now: number };
  /** Sum over all changes of the change times the clock, piece-seconds: the integral of `pieces` follows from that. */
  private moments = 0;

  constructor(clock: { readonly now: number }) {
    this.clock = clock;
  }

  add(): void {
    this.pieces++;
    this.moments -= this.clock.now;
  }

  remove(): void {
    this.pieces--;
    this.moments += this.clock.now;
  }

  /** Takes over what another holds and has held. */
  absorb({ pieces, moments }: Holding): void {
    this.pieces += pieces;
    this.moments += moments;
  }

  /** Integral of the pieces held up to now, piece-seconds. */
  seconds(): number {
    return this.pieces * this.clock.now + this.moments;
  }
}
