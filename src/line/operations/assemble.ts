import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { clearance, margin, type Pair } from '../fit.ts';
import type { Flaw } from '../flaw.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { FitProbe } from '../probes/fit-probe.ts';
import type { Reader } from '../reader.ts';
import type { Rejects } from '../rejects.ts';
import type { Stock } from '../stock.ts';
import type { Tally } from '../tally.ts';
import type { Variation } from '../variation.ts';
import type { VisitTime } from '../visit-time.ts';

/** A bought-in mate: where it comes from and how its features are drawn. */
export interface Mate {
  readonly stock: Stock;
  readonly features: readonly { nominal: number; variation: Variation }[];
}

/** How waiting parts are chosen for the mate in hand: by readings of both. */
export interface Matching {
  readonly among: number;
  readonly guard: number;
  readonly repeatability: number;
  readonly takes: number;
  readonly z: Sampler;
}

export interface AssembleParts {
  readonly time: VisitTime;
  readonly next: Place;
  readonly scrap: Place;
  readonly parts: PartTable;
  readonly tally: Tally;
  readonly reader: Reader | null;
  readonly mates: readonly Mate[];
  readonly pairs: readonly Pair[];
  readonly mateTries: number;
  readonly scrapWithoutMates: boolean;
  /** Column: 1 when the part's mark took. */
  readonly marked: number;
  /** Which parts have a flaw, so that they never fit. */
  readonly flaw: Flaw | null;
}

/** The mates that one machine has in hand. */
class Hand {
  /** True dimensions of the mates, and their readings while matching. */
  readonly mate: Float64Array;
  readonly mateRead: Float64Array;
  full = false;
  tries = 0;
  /** Where the part on the machine goes without an attempt; null for an attempt. */
  destined: Place | null = null;

  constructor(features: number) {
    this.mate = new Float64Array(features);
    this.mateRead = new Float64Array(features);
  }
}

/** Puts a part and its mates together; the worst pair decides whether they fit. */
export class Assemble implements Operation {
  rejects: Rejects;
  matching: Matching | null = null;
  readonly reader: Reader | null;
  /** Mates of each kind that stayed with a part, and that were thrown away. */
  private used = 0;
  private thrown = 0;
  /** Told of every attempt: whether it was a misfit. */
  readonly fitListeners: ((misfit: boolean) => void)[] = [];
  /** Looks at first attempts; null while nobody asks. */
  probe: FitProbe | null = null;
  private readonly on: AssembleParts;
  private readonly attempted: number;
  /** By machine. */
  private readonly hands: readonly Hand[];

  constructor(on: AssembleParts, rejects: Rejects, machines: number) {
    this.on = on;
    this.reader = on.reader;
    this.rejects = rejects;
    this.attempted = on.parts.column(0);
    const features = on.mates.reduce((sum, mate) => sum + mate.features.length, 0);
    this.hands = Array.from({ length: machines }, () => new Hand(features));
  }

  ready(machine: Machine): boolean {
    return this.hands[machine.slot]!.full || this.on.scrapWithoutMates || this.matesThere();
  }

  begin(machine: Machine): boolean {
    const inbox = machine.inbox!;
    if (inbox.count === 0 || !this.ready(machine)) return false;
    const { time, reader, scrap } = this.on;
    const hand = this.hands[machine.slot]!;
    hand.destined = null;
    machine.loaded = 1;
    machine.cycle = 0;
    if (!hand.full && !this.matesThere()) {
      machine.load[0] = inbox.shift();
      hand.destined = scrap;
      return true;
    }
    if (!hand.full) this.takeMates(hand);
    const row = this.matching ? inbox.take(this.bestOf(inbox, hand)) : inbox.shift();
    machine.load[0] = row;
    const known = reader?.read(row) ?? true;
    const choosing = this.matching?.takes ?? 0;
    const reading = reader?.seconds ?? 0;
    hand.destined = reader?.sent ?? null;
    const assembling = hand.destined === null ? time.of(row) : 0;
    machine.cycle = assembling + choosing + reading;
    if (!known && hand.destined === null && reader!.spec.unread.scraps) hand.destined = scrap;
    return true;
  }

  finish(machine: Machine): void {
    const hand = this.hands[machine.slot]!;
    machine.outlets[0] = hand.destined ?? this.attempt(machine.load[0]!, hand);
  }

  /** Mates of each kind taken: those used, thrown away and in hand. */
  get taken(): number {
    return this.used + this.thrown + this.hands.filter(({ full }) => full).length;
  }

  private attempt(row: number, hand: Hand): Place {
    const { parts, tally, pairs, mateTries, next, flaw } = this.on;
    let worst = Number.POSITIVE_INFINITY;
    let tight = false;
    for (const pair of pairs) {
      const gap = clearance(pair, parts.get(row, pair.feature.truth), hand.mate[pair.mate]!);
      const left = margin(pair, gap);
      if (left < worst) {
        worst = left;
        tight = gap < pair.least;
      }
    }
    const flawed = flaw?.isAt(row) === true;
    const fits = worst >= 0 && !flawed;
    if (parts.get(row, this.attempted) === 0) {
      parts.set(row, this.attempted, 1);
      tally.firstAttempts++;
      if (fits) tally.firstFits++;
      if (this.probe !== null) this.probe.see(pairs, parts, row, hand.mate);
    }
    for (const listener of this.fitListeners) listener(!fits);
    if (fits) {
      hand.full = false;
      this.used++;
      return next;
    }
    // A flawed part is neither: it does not go on whatever its dimensions.
    if (!flawed) {
      if (tight) tally.tight++;
      else tally.loose++;
    }
    if (++hand.tries >= mateTries) {
      hand.full = false;
      this.thrown++;
    }
    return this.rejects(row);
  }

  private matesThere(): boolean {
    for (const { stock } of this.on.mates) if (stock.onHand === 0) return false;
    return true;
  }

  private takeMates(hand: Hand): void {
    let i = 0;
    for (const { stock, features } of this.on.mates) {
      const lot = stock.take();
      for (const { nominal, variation } of features) {
        hand.mate[i++] = nominal + variation.ofLot(lot) + variation.ofPiece();
      }
    }
    const { matching } = this;
    if (matching) {
      for (let k = 0; k < i; k++) hand.mateRead[k] = hand.mate[k]! + matching.repeatability * matching.z();
    }
    hand.full = true;
    hand.tries = 0;
  }

  /**
   * The place in the buffer of the part to use for the mate in hand: of those whose readings promise a margin of
   * at least the guard, the one that fits hardest, so that easy parts are kept for difficult mates; when none
   * does, the one with the widest margin. The oldest of equals.
   */
  private bestOf(inbox: { readonly count: number; peek(i: number): number }, hand: Hand): number {
    const { parts, pairs, reader, marked } = this.on;
    const { among, guard } = this.matching!;
    let best = 0;
    let rank = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < Math.min(inbox.count, among); i++) {
      const row = inbox.peek(i);
      const known = reader ? reader.canRead(row) : parts.get(row, marked) === 1;
      let worst = Number.POSITIVE_INFINITY;
      for (const pair of pairs) {
        const reading = known ? parts.get(row, pair.feature.reading) : Number.NaN;
        // A part without a reading is taken to be as designed.
        const size = Number.isNaN(reading) ? pair.feature.spec.aim : reading;
        worst = Math.min(worst, margin(pair, clearance(pair, size, hand.mateRead[pair.mate]!)));
      }
      // Any part beyond the guard ranks above every part short of it, and the less beyond the higher.
      const own = worst >= guard ? 1 / (1 + worst) : worst - guard;
      if (own > rank) {
        rank = own;
        best = i;
      }
    }
    return best;
  }
}
