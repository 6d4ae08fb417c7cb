import type { Bounds } from '../scenario/conditions/bounds.ts';

/**
 * Whether there is little of something, or much: little from less than `below` on until there is at least `until`, much
 * from more than `above` on until there is at most `until`.
 */
export class Level {
  holds: boolean;
  private readonly much: boolean;
  private readonly bound: number;
  private readonly until: number;
  private readonly tell: (holds: boolean) => void;

  /** @param amount how much there is at first */
  constructor(bounds: Bounds, amount: number, tell: (holds: boolean) => void) {
    this.much = 'above' in bounds;
    this.bound = 'above' in bounds ? bounds.above : bounds.below;
    this.until = bounds.until;
    this.tell = tell;
    this.holds = this.begins(amount);
  }

  /** Whether so much makes it another than it was. */
  isCrossed(amount: number): boolean {
    if (!this.holds) return this.begins(amount);
    return this.much ? amount <= this.until : amount >= this.until;
  }

  /** It is another from now on: says so. */
  cross(): void {
    this.holds = !this.holds;
    this.tell(this.holds);
  }

  /** Of a whole number of things: it is not crossed while there are more than this. */
  get least(): number {
    if (this.much) return this.holds ? this.until : Number.NEGATIVE_INFINITY;
    return this.holds ? Number.NEGATIVE_INFINITY : this.bound - 1;
  }

  /** Of a whole number of things: it is not crossed either while there are fewer than this. */
  get most(): number {
    if (this.much) return this.holds ? Number.POSITIVE_INFINITY : this.bound + 1;
    return this.holds ? this.until : Number.POSITIVE_INFINITY;
  }

  private begins(amount: number): boolean {
    return this.much ? amount > this.bound : amount < this.bound;
  }
}
