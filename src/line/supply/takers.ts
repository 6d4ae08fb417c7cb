/** What one station, or one machine of it, has come to wait for of a stock. */
export interface Want {
  /** Pieces that something waits for. */
  owed: number;
  /** Whether it takes pieces of another stock just now, in the place of which this one stands or may stand. */
  idle: boolean;
  /** When it came to wait for the first of them, by number among all that did. */
  turn: number;
}

/** A station or a repair that takes pieces. */
export interface Taker {
  /** Pieces have come. */
  wake(): void;
  /** Whether a part waits at its door because it cannot start: where it has no places in front. */
  readonly keepsOut: boolean;
}

interface Entry {
  readonly taker: Taker;
  readonly wants: Want[];
}

/** The turn of one that waits for nothing: after all others. */
const LAST = Number.POSITIVE_INFINITY;

/** All that takes pieces of a stock, and what of it each has come to wait for. */
export class Takers {
  /** Pieces that something waits for, at all of them together. */
  owed = 0;
  private readonly entries: Entry[] = [];
  /** Whether pieces that come go to whoever has waited longest, and not to all in the order they were entered. */
  private inTurn = false;
  private turns = 0;
  private readonly clock: { readonly now: number };
  /** Pieces on hand while some are owed: who could have one waits for something else, such as another mate or a machine. */
  private there = 0;
  /** Integral up to `since` of the pieces owed that are not there, piece-seconds. */
  private waited = 0;
  private since = 0;

  constructor(clock: { readonly now: number }) {
    this.clock = clock;
  }

  /** @param idle whether it takes none yet */
  enter(taker: Taker, idle: boolean): Want {
    const want = { owed: 0, idle, turn: 0 };
    const known = this.entries.find((entry) => entry.taker === taker);
    if (known) known.wants.push(want);
    else this.entries.push({ taker, wants: [want] });
    return want;
  }

  serveInTurn(): void {
    this.inTurn = true;
  }

  /** Whether no other takes pieces. */
  areOnly(want: Want): boolean {
    return (
      this.entries.length === 1 && this.entries[0]!.wants.length === 1 && this.entries[0]!.wants[0] === want
    );
  }

  /** None is on hand, and so many pieces are waited for from now on. */
  note(want: Want, waiting: number): void {
    if (want.owed === 0) want.turn = ++this.turns;
    this.change(waiting - want.owed);
    this.there = 0;
    want.owed = waiting;
  }

  /** One of those that waited for a piece has it. */
  served(want: Want): void {
    this.change(-1);
    want.owed--;
  }

  /** So many pieces are on hand from now on. */
  have(pieces: number): void {
    this.change(0);
    this.there = pieces;
  }

  /** No more than so many are waited for from now on. */
  limit(want: Want, waiting: number): void {
    this.change(waiting - want.owed);
    want.owed = waiting;
  }

  /** A station without places in front does not notice what waits at its door; says whether there was any such. */
  lookAtDoors(): boolean {
    let any = false;
    for (const { taker, wants } of this.entries) {
      if (!taker.keepsOut || wants[0]!.owed > 0 || wants[0]!.idle) continue;
      this.note(wants[0]!, 1);
      any = true;
    }
    return any;
  }

  /** Pieces have come. */
  wake(): void {
    for (const { taker } of this.inTurn ? this.byTurn() : this.entries) taker.wake();
  }

  /** Integral of the pieces waited for up to now, piece-seconds. */
  settle(): number {
    this.change(0);
    return this.waited;
  }

  private change(pieces: number): void {
    const { now } = this.clock;
    this.waited += Math.max(0, this.owed - this.there) * (now - this.since);
    this.since = now;
    this.owed += pieces;
  }

  /** The longest waiting first. A station has one turn, however many wait in front of it. */
  private byTurn(): Entry[] {
    const turn = ({ wants }: Entry) =>
      wants.reduce((first, { owed, turn }) => (owed > 0 ? Math.min(first, turn) : first), LAST);
    const turns = new Map(this.entries.map((entry) => [entry, turn(entry)]));
    return [...this.entries].sort((a, b) => compare(turns.get(a)!, turns.get(b)!));
  }
}

const compare = (a: number, b: number): number => (a === b ? 0 : a - b);
