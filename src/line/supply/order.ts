/** Whoever an order was placed with. */
interface PlacedWith {
  readonly name: string;
  /** The share of unsound pieces that the inspection finds. */
  readonly finds: number;
  /** What a piece costs that comes. */
  readonly price: number;
  /** Whether it delivers nothing just now. */
  readonly isOut: boolean;
  /** Keeps an order that fell due until it delivers again. */
  hold(order: Order): void;
  /** The soonest that an order can come which is ready at `ready`, s, with these before it. */
  soonest(order: Order, ready: number, out: Iterable<Order>): number;
  /** One of those that are out comes sooner: moves up what waits behind it for its turn alone, and returns it. */
  closeUp(out: Iterable<Order>, now: number): readonly Order[];
}

/** An order that is out, with what will become of it. */
export class Order {
  readonly supplier: PlacedWith;
  /** From 1; also the number of the lot that it brings. */
  readonly number: number;
  /** Pieces ordered; those that come; of these, those that are not sound; of these, those that the inspection finds. */
  readonly pieces: number;
  readonly brought: number;
  unsound: number;
  found: number;
  /** Time that the inspection takes, s. */
  readonly inspection: number;
  /** When it could come if none were before it, and when it is due, s. */
  ready: number;
  due: number;
  /** Whether it has fallen due. */
  arrived = false;
  /** Whether it was sped up, and what each of its pieces costs more for it. */
  spedUp = false;
  dearer = 0;

  constructor(
    supplier: PlacedWith,
    number: number,
    pieces: number,
    ready: number,
    due: number,
    brings: Pick<Order, 'brought' | 'unsound' | 'found' | 'inspection'>,
  ) {
    this.supplier = supplier;
    this.number = number;
    this.pieces = pieces;
    this.ready = ready;
    this.due = due;
    this.brought = brings.brought;
    this.unsound = brings.unsound;
    this.found = brings.found;
    this.inspection = brings.inspection;
  }
}
