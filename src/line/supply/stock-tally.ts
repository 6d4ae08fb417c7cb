/** The running counts of a limited stock, from the start of the run on; money in the scenario's own currency. */
export class StockTally {
  /** Pieces put on hand. */
  delivered = 0;
  /** Pieces taken, and those among them that were waited for. */
  taken = 0;
  late = 0;
  /** Pieces that something waits for, as last brought up to date. */
  owed = 0;
  /** Pieces that were asked for in vain: what wanted them went without. */
  refused = 0;
  /** Times that something came to wait for a piece, or went without, since the delivery before. */
  stockOuts = 0;
  /** Deliveries, and those before which there was such a time. */
  cycles = 0;
  shortCycles = 0;
  orders = 0;
  /** Pieces ordered; and of deliveries, what never came, and what inspection took out. */
  ordered = 0;
  missing = 0;
  found = 0;
  /** Pieces on hand that turned out not to be sound, and that grew too old. */
  discovered = 0;
  expired = 0;
  /** Integrals of pieces on hand and on order, piece-seconds, and time with none on hand, s; as last brought up to date. */
  onHandSeconds = 0;
  onOrderSeconds = 0;
  outSeconds = 0;
  /** Integral of the pieces taken and not used yet, piece-seconds. */
  heldSeconds = 0;
  /** Integral of the pieces that something waited for and that were not on hand, piece-seconds. */
  waitedSeconds = 0;
  /** Pieces put on hand out of the reserve, and the integral of those left in it, piece-seconds. */
  drawn = 0;
  reserveSeconds = 0;
  purchase = 0;
  ordering = 0;
  expedite = 0;

  copy(): StockTally {
    return Object.assign(new StockTally(), this);
  }
}
