/** The time that runs may take, told by how long those before took, so that it is not overrun by the next. */
export class Budget {
  private readonly within: number;
  private readonly now: () => number;
  private readonly from: number;

  /**
   * @param within s; may be infinite
   * @param now a clock, s
   */
  constructor(within: number, now: () => number) {
    this.within = within;
    this.now = now;
    this.from = now();
  }

  /** How many runs more there is time for, at the pace of the `done` runs so far, 1 or more. */
  affordable(done: number): number {
    const spent = this.now() - this.from;
    if (spent > this.within) return 0;
    return spent > 0 ? ((this.within - spent) * done) / spent : Number.POSITIVE_INFINITY;
  }
}
