import type { MateKind } from '../mate.ts';
import { Holding } from './holding.ts';

/**
 * Mates without features that one station alone takes, always one of each together. While a piece taken brings nothing
 * about, they are only counted here, once for all of them; whoever looks at one of their stocks has it booked first.
 */
export class Kit {
  /** Sets that stayed with a part, and that were thrown away. */
  used = 0;
  thrown = 0;
  readonly kinds: readonly MateKind[];
  /** Sets in hand. */
  readonly held: Holding;
  private readonly clock: { readonly now: number };
  /** Sets that may be taken without a look at the stocks, those taken so far, and the sum of the times when, s. */
  private quiet = 0;
  private taken = 0;
  private moments = 0;

  /** @param kinds each of a stock of its own, which nothing else takes */
  constructor(kinds: readonly MateKind[], clock: { readonly now: number }) {
    this.kinds = kinds;
    this.clock = clock;
    this.held = new Holding(clock);
    for (const { stock } of kinds) {
      stock.onLook = () => this.book();
      stock.unbooked = () => this.taken;
    }
  }

  /** Whether sets may be taken without a look at the stocks; then nothing waits for any of them. */
  get isQuiet(): boolean {
    return this.taken < this.quiet;
  }

  /** Whether a set is on hand. */
  get there(): boolean {
    return this.isQuiet || this.look();
  }

  /** A set stays with a part. */
  use(): void {
    this.used++;
    this.held.remove();
  }

  throwAway(): void {
    this.thrown++;
    this.held.remove();
  }

  /** Takes a set, which must be on hand. */
  take(): void {
    this.held.add();
    if (this.taken < this.quiet) {
      this.taken++;
      this.moments += this.clock.now;
    } else for (const { stock, want } of this.kinds) stock.take(want);
  }

  /** Books what was taken so far with the stocks, which are looked at anew before more is taken. */
  book(): void {
    const { taken, moments } = this;
    this.quiet = 0;
    this.taken = 0;
    this.moments = 0;
    if (taken > 0) for (const { stock } of this.kinds) stock.takeMany(taken, moments);
  }

  /** Books what there is, and lets the kinds be taken one by one from now on. */
  dissolve(): void {
    this.book();
    for (const kind of this.kinds) {
      kind.stock.onLook = null;
      kind.stock.unbooked = null;
      kind.used += this.used;
      kind.thrown += this.thrown;
      kind.held.absorb(this.held);
    }
  }

  private look(): boolean {
    this.book();
    let quiet = Number.MAX_SAFE_INTEGER;
    for (const { stock } of this.kinds) quiet = Math.min(quiet, stock.quiet);
    const there = quiet > 0 || this.kinds.every(({ stock }) => stock.onHand > 0);
    this.quiet = quiet;
    return there;
  }
}
