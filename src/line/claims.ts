/** Several that set one thing, each for as long as it claims it: of those that do, the last entered has its way. */
export class Claims<T> {
  private readonly wanted: { readonly value: T; held: boolean }[] = [];
  private readonly otherwise: T;
  private readonly set: (value: T) => void;
  private now: T;

  /**
   * @param otherwise what holds while nobody claims it, and so at first
   * @param set told of each change
   */
  constructor(otherwise: T, set: (value: T) => void) {
    this.otherwise = otherwise;
    this.now = otherwise;
    this.set = set;
  }

  /** Enters one that wants `value`; what comes back takes whether it claims it from now on. */
  enter(value: T): (holds: boolean) => void {
    const claim = { value, held: false };
    this.wanted.push(claim);
    return (holds) => {
      claim.held = holds;
      const last = this.wanted.findLast(({ held }) => held);
      const value = last === undefined ? this.otherwise : last.value;
      if (value === this.now) return;
      this.now = value;
      this.set(value);
    };
  }
}
