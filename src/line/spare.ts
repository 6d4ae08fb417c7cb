import type { Machine } from './machine.ts';
import type { Stock, Want } from './stock.ts';

/** Whoever repairs what needs the spare. */
interface Repair {
  /** A piece is put aside for it, so that somebody can be called. */
  supplied(): void;
}

/** The piece that can break at one machine in one way, and the spare that replaces it. */
export class Spare {
  /** Does not wait as a station does, with parts at its door. */
  readonly keepsOut = false;
  readonly machine: Machine;
  repair!: Repair;
  /** Pieces taken from stock, worn out, given to another machine and got from one; it came with one. */
  taken = 0;
  worn = 0;
  given = 0;
  got = 0;
  /** Whether a repair waits for a piece. */
  waits = false;
  /** Called when it begins to wait. */
  onWait: (() => void) | null = null;
  private readonly stock: Stock;
  private readonly want: Want;

  constructor(stock: Stock, machine: Machine) {
    this.stock = stock;
    this.machine = machine;
    this.want = stock.wantInTurn(this);
  }

  /** When it began to wait, among all that wait for the stock. */
  get turn(): number {
    return this.want.turn;
  }

  /** Puts a piece aside for the repair, at once or when its turn comes. */
  ask(): void {
    if (this.stock.onHand > 0) return this.take();
    this.waits = true;
    this.machine.lack();
    this.stock.lack(this.want, 1);
    this.onWait?.();
  }

  /** A delivery has come. */
  wake(): void {
    if (!this.waits || this.stock.onHand === 0) return;
    this.waits = false;
    this.machine.supplied();
    this.take();
  }

  /** Waits no more: the piece of another machine has come. */
  receive(): void {
    this.got++;
    this.waits = false;
    this.stock.forgo(this.want);
    this.machine.supplied();
    this.repair.supplied();
  }

  private take(): void {
    this.taken++;
    this.stock.take(this.want);
    this.repair.supplied();
  }
}
