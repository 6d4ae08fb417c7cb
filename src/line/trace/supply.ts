import type { Hand } from '../hand.ts';
import type { Line } from '../line.ts';
import type { Stock } from '../stock.ts';
import type { Kit } from '../supply/kit.ts';
import type { Lots } from '../supply/lots.ts';
import type { Orders } from '../supply/orders.ts';
import type { Piece } from './piece.ts';
import { Steps } from './steps.ts';
import { tap } from './tap.ts';
import type { TracedOrder, TracedStock } from './trace.ts';

/** What is followed of one stock. */
class Followed {
  readonly stock: Stock;
  readonly level: Steps<number> | null;
  readonly orders: TracedOrder[] = [];
  taken = 0;
  /** Pieces taken that are not booked with the stock yet. */
  unbooked = 0;

  constructor(stock: Stock) {
    this.stock = stock;
    this.level = stock.limited ? new Steps(stock.onHand) : null;
  }

  piece(lot: number): Piece {
    return { stock: this.stock.name, lot, piece: ++this.taken };
  }
}

/** Writes down what is on hand and on order, which pieces are taken, and which of them a station has in hand. */
export class Supply {
  private readonly stocks: ReadonlyMap<string, Followed>;
  private readonly clock: { readonly now: number };
  private readonly inHand = new Map<Hand, readonly Piece[]>();
  /** Pieces taken since somebody asked. */
  private pieces: Piece[] = [];

  constructor({ stocks, calendar, assemblies }: Line) {
    this.clock = calendar;
    this.stocks = new Map([...stocks].map(([name, stock]) => [name, new Followed(stock)]));
    for (const followed of this.stocks.values()) this.follow(followed);
    for (const { hands, ahead, on } of assemblies.values()) {
      for (const hand of [...hands, ...(ahead?.hands ?? [])]) this.followHand(hand);
      if (on.mates.kit !== null) this.followKit(on.mates.kit);
    }
  }

  /** Does something, and says which pieces were taken meanwhile. */
  during<Done>(act: () => Done): { readonly done: Done; readonly pieces: readonly Piece[] } {
    const before = this.pieces;
    const pieces: Piece[] = [];
    this.pieces = pieces;
    const done = act();
    this.pieces = before;
    return { done, pieces };
  }

  /** The mates in this hand. */
  matesIn(hand: Hand): readonly Piece[] {
    return this.inHand.get(hand) ?? [];
  }

  traced(): TracedStock[] {
    return [...this.stocks].map(([name, { level, orders }]) => ({ name, level, orders }));
  }

  private follow(followed: Followed): void {
    const { stock } = followed;
    tap(stock, 'take', (inner) => (want) => {
      const lot = inner(want);
      this.pieces.push(followed.piece(lot));
      return lot;
    });
    tap(stock, 'takeMany', (inner) => (pieces, moments) => {
      followed.unbooked = 0;
      inner(pieces, moments);
    });
    if (followed.level !== null) this.followLots(stock.lots, followed, followed.level);
    if (stock.orders !== null) this.followOrders(stock.orders, followed);
  }

  private followLots(lots: Lots, { orders }: Followed, level: Steps<number>): void {
    const change = (pieces: number) => level.set(this.clock.now, level.now + pieces);
    tap(lots, 'take', (inner) => () => {
      change(-1);
      return inner();
    });
    tap(lots, 'add', (inner) => (number, pieces, unsound, expires) => {
      change(pieces);
      const order = orders[number - 1];
      if (order) orders[number - 1] = { ...order, came: { at: this.clock.now, pieces } };
      inner(number, pieces, unsound, expires);
    });
    tap(lots, 'discover', (inner) => (luck) => {
      const lost = inner(luck);
      change(-lost);
      return lost;
    });
    tap(lots, 'expire', (inner) => (now) => {
      const old = inner(now);
      change(-old);
      return old;
    });
  }

  private followOrders(its: Orders, { orders }: Followed): void {
    its.listeners.push((number) => {
      const { pieces } = its.out.get(number)!;
      orders[number - 1] = { number, pieces, placed: this.clock.now, expedited: null, came: null };
    });
    tap(its, 'expedite', (inner) => (number) => {
      const before = new Set([...its.out.values()].filter(({ spedUp }) => spedUp));
      const done = inner(number);
      for (const order of its.out.values()) {
        if (!order.spedUp || before.has(order)) continue;
        orders[order.number - 1] = { ...orders[order.number - 1]!, expedited: this.clock.now };
      }
      return done;
    });
  }

  private followHand(hand: Hand): void {
    tap(hand, 'fill', (inner) => (without) => {
      const { pieces } = this.during(() => inner(without));
      this.inHand.set(hand, [...this.matesIn(hand), ...pieces]);
    });
    tap(hand, 'use', (inner) => () => {
      this.inHand.delete(hand);
      return inner();
    });
    tap(hand, 'throwAway', (inner) => () => {
      this.inHand.delete(hand);
      inner();
    });
  }

  /** A set that is only counted for now takes a piece of each of its stocks none the less. */
  private followKit(kit: Kit): void {
    tap(kit, 'take', (inner) => () => {
      const { pieces } = this.during(() => inner());
      this.pieces.push(...(pieces.length > 0 ? pieces : kit.kinds.map(({ stock }) => this.unbooked(stock))));
    });
  }

  private unbooked({ name }: Stock): Piece {
    const followed = this.stocks.get(name)!;
    const { level, stock } = followed;
    level?.set(this.clock.now, level.now - 1);
    return followed.piece(level === null ? 0 : stock.lots.ofPiece(followed.unbooked++));
  }
}
