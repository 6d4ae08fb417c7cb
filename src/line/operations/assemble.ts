import { Fit, type Pair } from '../fit.ts';
import type { Flaw } from '../flaw.ts';
import type { Forcing } from '../forcing.ts';
import { Hand } from '../hand.ts';
import type { Machine, Operation } from '../machine.ts';
import type { Matching } from '../matching.ts';
import type { MateKind } from '../mate.ts';
import type { Mates } from '../mates.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { Reader } from '../reader.ts';
import type { Rejects } from '../rejects.ts';
import type { Tally } from '../tally.ts';
import type { VisitTime } from '../visit-time.ts';
import type { BuildAhead } from './build-ahead.ts';

export interface AssembleParts {
  readonly time: VisitTime;
  readonly next: Place;
  /** Scrap of parts without a mate, of those not known for want of a mark, and of those spoilt by pressing. */
  readonly noMates: Place;
  readonly unread: Place;
  readonly spoilt: Place;
  readonly parts: PartTable;
  readonly tally: Tally;
  readonly reader: Reader | null;
  readonly mates: Mates;
  readonly pairs: readonly Pair[];
  readonly mateTries: number;
  readonly scrapWithoutMates: boolean;
  /** Null where nothing is pressed together. */
  readonly forcing: Forcing | null;
  /** Column: 1 when the part's mark took. */
  readonly marked: number;
  /** Which parts have a flaw, so that they never fit. */
  readonly flaw: Flaw | null;
}

/** Looks at first attempts, and at what becomes of those that are pressed together. */
interface AttemptProbe {
  see(pairs: readonly Pair[], parts: PartTable, row: number, mate: Float64Array): void;
  pressed(spoilt: boolean): void;
}

/** Where misfits go. */
export interface Misfits {
  readonly tight: Rejects;
  readonly loose: Rejects;
  /** Those with a flaw, which never fit. */
  readonly flawed: Rejects;
}

/** Puts a part and its mates together; the worst pair decides whether they fit. */
export class Assemble implements Operation {
  misfits: Misfits;
  matching: Matching | null = null;
  /** Null where no policy builds ahead. */
  ahead: BuildAhead | null = null;
  readonly on: AssembleParts;
  /** Told of every attempt: whether it did not fit, be it pressed together or not. */
  readonly fitListeners: ((misfit: boolean) => void)[] = [];
  /** Looks at first attempts; null while nobody asks. */
  probe: AttemptProbe | null = null;
  private readonly attempted: number;
  private readonly fit: Fit;
  /** By pair, the attempts that it decided. */
  readonly decided: readonly { tight: number; loose: number }[];
  /** By machine. */
  readonly hands: readonly Hand[];

  constructor(on: AssembleParts, misfits: Misfits, machines: number) {
    this.on = on;
    this.misfits = misfits;
    this.attempted = on.parts.column(0);
    this.fit = new Fit(on.parts, on.pairs, on.flaw);
    this.decided = on.pairs.map(() => ({ tight: 0, loose: 0 }));
    this.hands = Array.from({ length: machines }, () => new Hand(on.mates));
  }

  get reader(): Reader | null {
    return this.on.reader;
  }

  ready(machine: Machine): boolean {
    if (this.ahead !== null) {
      // It would go on with what was put aside.
      if (this.ahead.couldResume) return false;
      if (this.ahead.couldStart) return true;
    }
    return this.hands[machine.slot]!.full || this.on.scrapWithoutMates || this.on.mates.there;
  }

  begin(machine: Machine): boolean {
    if (this.ahead?.resume(machine)) return true;
    const inbox = machine.inbox!;
    if (inbox.count === 0) {
      if (!inbox.isAwaited) this.on.mates.limit(this.ahead);
      return false;
    }
    const hand = this.hands[machine.slot]!;
    if (!hand.full && !this.on.mates.there) {
      if (this.ahead?.start(machine)) return true;
      if (!this.on.scrapWithoutMates) return this.lacks(inbox.count);
      this.put(machine, hand, inbox.shift(), 0);
      hand.destined = this.on.noMates;
      this.on.mates.refuse();
      return true;
    }
    const { matching } = this;
    if (!hand.full) {
      hand.fill();
      matching?.read(hand);
    }
    const place = matching === null ? 0 : matching.choose(inbox, hand, machine);
    if (place < 0) return false;
    const row = place === 0 ? inbox.shift() : inbox.take(place);
    this.put(machine, hand, row, matching?.takes ?? 0);
    if (this.prepare(machine, hand, row)) this.press(machine, hand);
    return true;
  }

  /** Reads the part's mark and adds that and the work on it to the cycle; says whether it is to be assembled here. */
  prepare(machine: Machine, hand: Hand, row: number): boolean {
    this.identify(machine, hand, row);
    // A part that is sent to be marked anew is not worked on now.
    if (hand.destined !== null && hand.destined === this.on.reader?.sent) return false;
    machine.cycle += this.on.time.of(row);
    return hand.destined === null;
  }

  finish(machine: Machine): void {
    if (this.ahead?.finish(machine)) return;
    const hand = this.hands[machine.slot]!;
    machine.outlets[0] = hand.destined ?? this.attempt(machine.load[0]!, hand);
    // The next part has these mates, and waits for none.
    if (hand.full) this.on.mates.served();
  }

  /** Mates of a kind taken: those used, thrown away and in hand. */
  taken(kind: MateKind): number {
    const inHand = this.hands.filter((hand) => hand.holds(kind)).length;
    const { kit } = this.on.mates;
    const inKits = kit?.kinds.includes(kind) ? kit.used + kit.thrown : 0;
    return kind.used + kind.thrown + inKits + inHand + (this.ahead?.holding(kind) ?? 0);
  }

  /** Integral of the mates of a kind that were taken and not used yet up to now, piece-seconds. */
  heldSeconds(kind: MateKind): number {
    const { kit } = this.on.mates;
    return kind.held.seconds() + (kit?.kinds.includes(kind) ? kit.held.seconds() : 0);
  }

  /** Lets a policy build ahead, for which each mate is taken by itself. */
  buildAhead(ahead: BuildAhead | null): void {
    for (const hand of this.hands) hand.scatter();
    this.on.mates.scatter();
    this.ahead = ahead;
  }

  /** Puts a part on the machine for a cycle of so many seconds. */
  put(machine: Machine, hand: Hand, row: number, cycle: number): void {
    machine.load[0] = row;
    machine.loaded = 1;
    machine.cycle = cycle;
    hand.destined = null;
  }

  private identify(machine: Machine, hand: Hand, row: number): void {
    const { reader, unread } = this.on;
    if (reader === null) return;
    const known = reader.read(row);
    machine.cycle += reader.seconds;
    hand.destined = reader.sent;
    if (!known && hand.destined === null && reader.spec.unread.scraps) hand.destined = unread;
  }

  /** What is pressed takes longer, which is known beforehand: the sizes do not change on the machine. */
  press(machine: Machine, hand: Hand): void {
    const { forcing } = this.on;
    if (forcing === null) return;
    this.fit.judge(machine.load[0]!, hand.mate);
    if (forcing.isTried(this.fit)) machine.cycle += forcing.takes;
  }

  /** Tries whether a part and the mates in hand fit; where the part goes then. */
  attempt(row: number, hand: Hand): Place {
    const { parts, tally, next, forcing, pairs } = this.on;
    const { fit } = this;
    fit.judge(row, hand.mate);
    const first = parts.get(row, this.attempted) === 0;
    if (first) {
      parts.set(row, this.attempted, 1);
      tally.firstAttempts++;
      if (fit.fits) tally.firstFits++;
      if (this.probe !== null) this.probe.see(pairs, parts, row, hand.mate);
    }
    for (const listener of this.fitListeners) listener(!fit.fits);
    if (fit.fits) {
      this.use(hand);
      return next;
    }
    if (forcing?.closes(fit)) return this.force(row, hand, forcing, first ? this.probe : null);
    return this.reject(row, hand);
  }

  private force(row: number, hand: Hand, forcing: Forcing, probe: AttemptProbe | null): Place {
    const { tally, next } = this.on;
    const spoilt = forcing.spoils(row);
    if (probe !== null) probe.pressed(spoilt);
    if (spoilt) {
      tally.damaged++;
      hand.throwAway();
      return this.on.spoilt;
    }
    tally.forced++;
    this.use(hand);
    return next;
  }

  private reject(row: number, hand: Hand): Place {
    const { tally, mateTries, forcing } = this.on;
    const { missing, excess, flawed } = this.fit;
    if (++hand.tries >= mateTries) hand.throwAway();
    // Whatever its dimensions, it does not go on: it is neither tight nor loose.
    if (flawed) return this.misfits.flawed(row);
    // Where tight ones are pressed, one that is loose anywhere counts as loose: no force helps it.
    if (forcing === null ? missing >= excess : excess === 0) {
      tally.tight++;
      this.decided[this.fit.tightest(row, hand.mate)]!.tight++;
      return this.misfits.tight(row);
    }
    tally.loose++;
    this.decided[this.fit.loosest(row, hand.mate)]!.loose++;
    return this.misfits.loose(row);
  }

  /** The mates in hand stay with the part. */
  private use(hand: Hand): void {
    if (hand.use()) this.on.tally.substituted++;
  }

  /** Says which mates so many parts wait for: none of them can be worked on, so it is never true. */
  private lacks(waiting: number): boolean {
    this.on.mates.lack(waiting, this.ahead);
    return false;
  }
}
