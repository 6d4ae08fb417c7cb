import type { Stock } from './stock.ts';
import { Holding } from './supply/holding.ts';
import type { Want } from './supply/takers.ts';

/** What a set-up or maintenance of one machine takes from a stock each time, such as a tool. */
export class Renewal {
  /** Does not wait as a station does, with parts at its door. */
  readonly keepsOut = false;
  /** Pieces taken. */
  taken = 0;
  /** Called when a piece has come that was waited for. */
  onCome: () => void = () => {};
  /** Those that are not in place yet. */
  readonly held: Holding;
  private readonly stock: Stock;
  private readonly want: Want;
  private waits = false;

  constructor(stock: Stock, clock: { readonly now: number }) {
    this.stock = stock;
    this.held = new Holding(clock);
    this.want = stock.wantInTurn(this);
  }

  /** Takes a piece, if there is one; else it waits for one from now on. */
  take(): boolean {
    this.waits = this.stock.onHand === 0;
    if (this.waits) this.stock.lack(this.want, 1);
    else this.get();
    return !this.waits;
  }

  /** A delivery has come. */
  wake(): void {
    if (!this.waits || this.stock.onHand === 0) return;
    this.waits = false;
    this.get();
    this.onCome();
  }

  private get(): void {
    this.taken++;
    this.held.add();
    this.stock.take(this.want);
  }
}
