/** Places in front of the first lot that may stand empty: to take it off a long list each time would be slow. */
const MOST_EMPTY = 1000;

interface Lot {
  readonly number: number;
  /** When its pieces are too old, s. */
  readonly expires: number;
  left: number;
  /** Pieces among them that are not sound, which nobody knows. */
  unsound: number;
  /** Whether the next piece is known to be sound. */
  tried: boolean;
}

/** What is on hand of a material, by lots: used in the order of delivery, or the first to expire first. */
export class Lots {
  /** Unsound pieces among those on hand. */
  unsound = 0;
  private readonly lots: Lot[] = [];
  /** Place of the lot in use. */
  private first = 0;

  add(number: number, pieces: number, unsound = 0, expires = Number.POSITIVE_INFINITY): void {
    if (pieces === 0) return;
    this.unsound += unsound;
    let at = this.lots.length;
    while (at > this.first && this.lots[at - 1]!.expires > expires) at--;
    const lot = { number, expires, left: pieces, unsound, tried: false };
    if (at === this.lots.length) this.lots.push(lot);
    else this.lots.splice(at, 0, lot);
  }

  /** Takes one piece, which must be there, and returns the number of its lot. */
  take(): number {
    const lot = this.lots[this.first]!;
    lot.tried = false;
    if (--lot.left === 0) this.usedUp();
    return lot.number;
  }

  /** Takes so many pieces, which must be there; the unsound are found out one by one and may not be among them. */
  takeMany(pieces: number): void {
    let wanted = pieces;
    while (wanted > 0) {
      const lot = this.lots[this.first]!;
      const taken = Math.min(wanted, lot.left);
      lot.tried = false;
      lot.left -= taken;
      wanted -= taken;
      if (lot.left === 0) this.usedUp();
    }
  }

  /**
   * Throws away what comes next and is not sound, until the next piece is, and returns how many pieces that were.
   * @param luck uniform numbers from 0 to 1, one for each piece tried
   */
  discover(luck: () => number): number {
    let lost = 0;
    for (;;) {
      const lot = this.lots[this.first];
      if (lot === undefined || lot.tried || lot.unsound === 0) return lost;
      if (luck() * lot.left >= lot.unsound) {
        lot.tried = true;
        return lost;
      }
      lost++;
      lot.unsound--;
      this.unsound--;
      if (--lot.left === 0) this.usedUp();
    }
  }

  /** Throws away what has expired by `now`, and returns how many pieces that were. */
  expire(now: number): number {
    let old = 0;
    for (
      let lot = this.lots[this.first];
      lot !== undefined && lot.expires <= now;
      lot = this.lots[this.first]
    ) {
      old += lot.left;
      this.unsound -= lot.unsound;
      this.usedUp();
    }
    return old;
  }

  /** The number of the lot of the piece that comes when so many, of those that are there, have been taken. */
  ofPiece(taken: number): number {
    let left = taken;
    for (const lot of this.lots.slice(this.first)) {
      if (left < lot.left) return lot.number;
      left -= lot.left;
    }
    throw new RangeError(`there is no piece behind ${taken} others`);
  }

  /** Pieces of all lots. */
  get pieces(): number {
    return this.lots.slice(this.first).reduce((sum, { left }) => sum + left, 0);
  }

  private usedUp(): void {
    if (++this.first <= MOST_EMPTY) return;
    this.lots.splice(0, this.first);
    this.first = 0;
  }
}
