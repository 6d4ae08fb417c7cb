import type { Intake } from './intake.ts';

/** Which stock is taken in the place of which, at all stations. */
export class Substitution {
  readonly intakes: Intake[] = [];
  private readonly instead = new Map<string, string>();

  /** Lets `by` be taken in the place of a stock from now on; null for the stock itself. What takes its place may be replaced, too. */
  set(stock: string, by: string | null): void {
    if (by === null) this.instead.delete(stock);
    else this.instead.set(stock, by);
    for (const intake of this.intakes) intake.turnTo(this.nowFor(intake.kinds[0]!));
  }

  private nowFor(stock: string): string {
    let at = stock;
    for (let next = this.instead.get(at); next !== undefined; next = this.instead.get(at)) at = next;
    return at;
  }
}
