/** The running counts of a line, from the start of the run on. */
export class Tally {
  started = 0;
  good = 0;
  scrapped = 0;
  /** Arrivals that found no room. */
  turnedAway = 0;
  /** Parts formed too cold, too hot, or with too thin a wall. */
  incomplete = 0;
  webbed = 0;
  thin = 0;
  reworked = 0;
  /** Parts deburred by hand at a trimming station. */
  deburred = 0;
  /** Parts that a rework station could not bring in and scrapped. */
  hopeless = 0;
  firstAttempts = 0;
  firstFits = 0;
  tight = 0;
  loose = 0;
  /** Attempts that were pressed together: sound, and spoiled by it. Neither counts as tight. */
  forced = 0;
  damaged = 0;
  unread = 0;
  /** Parts sent to be marked anew, each time. */
  reMarked = 0;
  /** Lots judged by an acceptance plan. */
  lotsAccepted = 0;
  lotsRejected = 0;
  /** Parts started from what stands in for their stock, and assemblies made with what stands in for a mate. */
  substituted = 0;
  /** Parts put aside without one of their mates. */
  setAside = 0;
  /** Spares taken out of a machine for another. */
  cannibalised = 0;
  /** Sum over good parts of the time from start to leaving, s. */
  leadSeconds = 0;
  /** The same over all parts that left. */
  stayedSeconds = 0;
  /** Integral of the number of parts in the line, up to the last change. */
  partSeconds = 0;
  ordersCame = 0;
  /** Those of them that were served at once. */
  ordersAtOnce = 0;
  ordersDue = 0;
  ordersOnTime = 0;
  /** Integral of the finished goods on hand, up to the last change. */
  finishedGoodsSeconds = 0;
  private since = 0;

  get inLine(): number {
    return this.started - this.good - this.scrapped - this.turnedAway;
  }

  /** Brings the integral up to `now`; called before every change of the number of parts. */
  advance(now: number): void {
    this.partSeconds += this.inLine * (now - this.since);
    this.since = now;
  }

  copy(now: number): Tally {
    this.advance(now);
    return Object.assign(new Tally(), this);
  }
}
