import type { Machine } from './machine.ts';
import type { Stock } from './stock.ts';
import { Holding } from './supply/holding.ts';
import type { Want } from './supply/takers.ts';

/** The way of breaking down that the spare mends. */
interface Mended {
  readonly place: number;
  /** Whether the piece is in place and whole. */
  readonly isWhole: boolean;
  /** A piece is put aside for the repair, so that somebody can be called. */
  supplied(): void;
  /** Lets its piece be taken out for another machine, and says what life is left in it, s. */
  give(): number;
  /** The repair will put in a piece with so much life left, s. */
  willLive(left: number): void;
}

/** The piece that can break at one machine in one way, and the spare that replaces it. */
export class Spare {
  /** Does not wait as a station does, with parts at its door. */
  readonly keepsOut = false;
  readonly stock: Stock;
  readonly machine: Machine;
  breakdown!: Mended;
  /** Pieces taken from stock, worn out, given to another machine and got from one; it came with one. */
  taken = 0;
  worn = 0;
  given = 0;
  got = 0;
  /** Whether a repair waits for a piece; and whether its own was not worn out but given away. */
  waits = false;
  lent = false;
  /** Called when it begins to wait, and when a piece is back in place. */
  onChange: (() => void) | null = null;
  /** Pieces from stock that are put aside and not in place yet. */
  readonly held: Holding;
  private readonly want: Want;
  /** Whether its repair is over and the machine has not gone on yet. */
  private returns = false;

  constructor(stock: Stock, machine: Machine, clock: { readonly now: number }) {
    this.stock = stock;
    this.held = new Holding(clock);
    this.machine = machine;
    this.want = stock.wantInTurn(this);
  }

  /** When it began to wait, among all that wait for the stock. */
  get turn(): number {
    return this.want.turn;
  }

  /** The piece has failed: puts another aside for the repair, at once or when its turn comes. */
  replace(): void {
    this.worn++;
    this.ask();
  }

  /** A delivery has come. */
  wake(): void {
    if (!this.waits || this.stock.onHand === 0) return;
    this.waits = false;
    this.machine.supplied();
    this.take();
  }

  /** Takes the piece out of the machine of another, which is whole, and leaves that one waiting. */
  takeOutOf(other: Spare): void {
    this.breakdown.willLive(other.breakdown.give());
    this.got++;
    this.lent = false;
    this.waits = false;
    this.stock.forgo(this.want);
    this.machine.supplied();
    this.breakdown.supplied();
    other.given++;
    other.lent = true;
    other.ask();
  }

  /** A piece is in place again. */
  isBack(): void {
    // A piece that was got from another machine was never put aside.
    if (this.held.pieces > 0) this.held.remove();
    this.lent = false;
    this.returns = true;
    this.onChange?.();
    this.returns = false;
  }

  /** Whether the machine stands anyway, whatever becomes of the piece. */
  get stands(): boolean {
    return this.machine.standsBesides(this.returns ? 1 : 0);
  }

  private ask(): void {
    if (this.stock.onHand > 0) return this.take();
    this.waits = true;
    this.machine.lack();
    this.stock.lack(this.want, 1);
    this.onChange?.();
  }

  private take(): void {
    this.taken++;
    this.held.add();
    this.stock.take(this.want);
    this.breakdown.supplied();
  }
}
