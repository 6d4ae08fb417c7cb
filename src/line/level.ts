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

  /** Of a whole number of things that becomes less: while more than so many are left, it is not crossed. */
  get alert(): number {
    if (this.much) return this.holds ? this.until : 0;
    return this.holds ? 0 : this.bound - 1;
  }

  private begins(amount: number): boolean {
    return this.much ? amount > this.bound : amount < this.bound;
  }
}
