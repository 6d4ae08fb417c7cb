/** Where a station takes pieces of a stock, or of what stands in for it. */
export class Intake {
  /** The names of the stock and of all that may take its place, itself first. */
  readonly kinds: readonly string[];
  private readonly wake: () => void;
  /** Lets the station take pieces of the kind at this place. */
  private readonly use: (place: number) => void;
  private place = 0;

  /** @param wake lets the station begin if it can now */
  constructor(kinds: readonly string[], wake: () => void, use: (place: number) => void) {
    this.kinds = kinds;
    this.wake = wake;
    this.use = use;
  }

  /** Takes pieces of this kind from now on; what is under way, or in hand, stays as it is. */
  turnTo(kind: string): void {
    const place = this.kinds.indexOf(kind);
    if (place === this.place) return;
    this.place = place;
    this.use(place);
    this.wake();
  }
}
