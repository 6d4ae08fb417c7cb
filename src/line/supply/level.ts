/** Whether a stock is low: from fewer than `below` pieces on hand on, until at least `until` are there. */
export class Level {
  low: boolean;
  readonly below: number;
  private readonly until: number;
  private readonly tell: (low: boolean) => void;

  /** @param until not less than `below` */
  constructor(below: number, until: number, onHand: number, tell: (low: boolean) => void) {
    this.below = below;
    this.until = until;
    this.low = onHand < below;
    this.tell = tell;
  }

  /** Whether so many pieces on hand make it another than it was. */
  isCrossed(onHand: number): boolean {
    return this.low ? onHand >= this.until : onHand < this.below;
  }

  /** It is another from now on: says so. */
  cross(): void {
    this.low = !this.low;
    this.tell(this.low);
  }
}
