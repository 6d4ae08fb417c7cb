/** Pieces of a stock that nothing takes until a policy puts them on hand. */
export class Reserve {
  readonly atStart: number;
  left: number;
  private readonly clock: { readonly now: number };
  /** Integral of the pieces left up to `since`, piece-seconds. */
  private kept = 0;
  private since = 0;

  constructor(pieces: number, clock: { readonly now: number }) {
    this.atStart = pieces;
    this.left = pieces;
    this.clock = clock;
  }

  /** Takes so many pieces out, as far as there are, and returns how many those were. */
  draw(pieces: number): number {
    const drawn = Math.min(pieces, this.left);
    this.settle();
    this.left -= drawn;
    return drawn;
  }

  /** Integral of the pieces left up to now, piece-seconds. */
  settle(): number {
    const { now } = this.clock;
    this.kept += this.left * (now - this.since);
    this.since = now;
    return this.kept;
  }
}
