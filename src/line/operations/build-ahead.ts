import type { Aside } from '../aside.ts';
import type { Hand } from '../hand.ts';
import type { Machine } from '../machine.ts';
import type { MateKind } from '../mate.ts';
import type { Mates } from '../mates.ts';
import type { Place } from '../place.ts';
import type { VisitTime } from '../visit-time.ts';

export interface BuildAheadRules {
  /** The mates of the station, and the place among them of the one to do without. */
  readonly mates: Mates;
  readonly without: number;
  /** Most parts that are put aside, or on the way there. */
  readonly upTo: number;
  /** Time to finish a part, s. */
  readonly finish: VisitTime;
}

/** What the assembling station does for it. */
interface Assembling {
  /** Puts a part on the machine for a cycle of so many seconds. */
  put(machine: Machine, hand: Hand, row: number, cycle: number): void;
  /** Adds the first work on the part to the cycle; says whether it is to be assembled here. */
  prepare(machine: Machine, hand: Hand, row: number): boolean;
  /** Adds to the cycle what the sizes ask for. */
  press(machine: Machine, hand: Hand): void;
  /** Tries whether they fit; where the part goes then. */
  attempt(row: number, hand: Hand): Place;
}

interface UnderWay {
  readonly hand: Hand;
  readonly finishing: boolean;
}

/**
 * Works on parts with the mates there are and puts them aside, to be finished once the missing mate is there: the oldest
 * first, before other parts. What was joined to a part stays with it: a part that does not fit in the end takes all its
 * mates with it, however often a mate may be tried. Mates in hand for other parts are not touched.
 */
export class BuildAhead {
  /** Whether more parts are put aside just now; those that are there are finished in any case. */
  on = false;
  readonly aside: Aside;
  private readonly rules: BuildAheadRules;
  private readonly station: Assembling;
  /** As many as can be needed at once, and those that are not in use. */
  readonly hands: readonly Hand[];
  private readonly free: Hand[];
  /** By machine: what it works on for this; null where it works as ever. */
  private readonly underWay: (UnderWay | null)[];

  constructor(
    rules: BuildAheadRules,
    station: Assembling,
    aside: Aside,
    hands: readonly Hand[],
    machines: number,
  ) {
    this.rules = rules;
    this.station = station;
    this.aside = aside;
    this.hands = hands;
    this.free = [...hands];
    this.underWay = new Array<UnderWay | null>(machines).fill(null);
  }

  /** Parts that wait for the missing mate, or will. */
  get waiting(): number {
    return this.underWay.reduce((sum, it) => (it !== null && !it.finishing ? sum + 1 : sum), this.aside.all);
  }

  /** Parts that wait for the mate at this place among those of the station: they have all others. */
  waitingFor(mate: number): number {
    return mate === this.rules.without ? this.waiting : 0;
  }

  /** Whether a part that was put aside could be gone on with. */
  get couldResume(): boolean {
    return this.aside.count > 0 && this.missing.stock.onHand > 0;
  }

  /** Whether a part could be worked on without the mate that is missing. */
  get couldStart(): boolean {
    const { mates, without, upTo } = this.rules;
    if (!this.on || this.missing.stock.onHand > 0 || this.waiting >= upTo) return false;
    return mates.all.every(({ now }, m) => m === without || now.stock.onHand > 0);
  }

  /** Pieces of a kind that were joined to parts here. */
  holding(kind: MateKind): number {
    return this.hands.filter((hand) => hand.holds(kind)).length;
  }

  /** Loads the oldest part that was put aside, if what it waits for is there. */
  resume(machine: Machine): boolean {
    this.clear(machine);
    if (!this.couldResume) return false;
    const { row, hand } = this.aside.take();
    hand.fill();
    hand.tries = Number.POSITIVE_INFINITY;
    this.underWay[machine.slot] = { hand, finishing: true };
    this.station.put(machine, hand, row, this.rules.finish.of(row));
    this.station.press(machine, hand);
    return true;
  }

  /** Loads the oldest waiting part without the mate that is missing, if that may be. */
  start(machine: Machine): boolean {
    if (!this.couldStart) return false;
    const inbox = machine.inbox!;
    const row = inbox.shift();
    const hand = this.free.pop()!;
    this.underWay[machine.slot] = { hand, finishing: false };
    this.station.put(machine, hand, row, 0);
    if (!this.station.prepare(machine, hand, row)) return true;
    hand.fill(this.rules.without);
    const { stock, want } = this.missing;
    stock.lack(want, this.waiting + inbox.count);
    return true;
  }

  /** The cycle is over: sends the part where it goes if it was one of these, and says whether it was. */
  finish(machine: Machine): boolean {
    const it = this.underWay[machine.slot]!;
    if (it === null) return false;
    const { hand, finishing } = it;
    const row = machine.load[0]!;
    this.underWay[machine.slot] = null;
    if (!finishing && hand.destined === null) {
      this.aside.expect(row, hand);
      machine.outlets[0] = this.aside;
      return true;
    }
    machine.outlets[0] = hand.destined ?? this.station.attempt(row, hand);
    this.free.push(hand);
    return true;
  }

  private get missing(): MateKind {
    return this.rules.mates.all[this.rules.without]!.now;
  }

  /** The machine is empty: what it had under way was scrapped in its cycle, and the mates with it. */
  private clear({ slot }: Machine): void {
    const it = this.underWay[slot]!;
    if (it === null) return;
    it.hand.throwAway();
    this.free.push(it.hand);
    this.underWay[slot] = null;
  }
}
