import type { Mate } from './mate.ts';
import { Kit } from './supply/kit.ts';

/** A mate with its place among those of the station, and that of its first feature among those of all mates. */
interface Placed {
  readonly mate: Mate;
  readonly place: number;
  readonly feature: number;
}

/** Parts that are put aside without one of their mates. */
interface Ahead {
  /** How many wait for the mate at this place. */
  waitingFor(place: number): number;
}

/** The mates that an assembling station takes, one of each. */
export class Mates {
  readonly all: readonly Mate[];
  /** Number of their features. */
  readonly features: number;
  /** Those that are taken as one; null where there are none. */
  kit: Kit | null = null;
  /** The others. */
  loose: readonly Placed[];
  private readonly placed: readonly Placed[];

  constructor(all: readonly Mate[]) {
    this.all = all;
    let feature = 0;
    this.placed = all.map((mate, place) => {
      const at = { mate, place, feature };
      feature += mate.now.features.length;
      return at;
    });
    this.features = feature;
    this.loose = this.placed;
  }

  /** Takes as one what can be: to be called when all that takes pieces is known. */
  gather(clock: { readonly now: number }): void {
    const alike = this.placed.filter(({ mate: { kinds, now } }) => {
      return kinds.length === 1 && now.features.length === 0 && now.stock.isFor(now.want);
    });
    if (alike.length === 0) return;
    this.kit = new Kit(
      alike.map(({ mate }) => mate.now),
      clock,
    );
    this.loose = this.placed.filter((at) => !alike.includes(at));
  }

  /** Takes each by itself from now on. */
  scatter(): void {
    this.kit?.dissolve();
    this.kit = null;
    this.loose = this.placed;
  }

  /** Whether one of each is on hand. */
  get there(): boolean {
    for (const { mate } of this.loose) if (mate.now.stock.onHand === 0) return false;
    return this.kit === null || this.kit.there;
  }

  /** So many parts wait for those that are not on hand, and those that are put aside for the one they miss. */
  lack(waiting: number, ahead: Ahead | null): void {
    for (const { mate, place } of this.placed) {
      const { stock, want } = mate.now;
      if (stock.onHand > 0) continue;
      // Those behind could not start for want of another mate, however many there were of this one.
      const could = Math.max(1, Math.min(waiting, this.besides(place)));
      stock.lack(want, could + (ahead?.waitingFor(place) ?? 0));
    }
  }

  /** How many parts there are mates for, but for the one at this place. */
  private besides(place: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const other of this.placed)
      if (other.place !== place) least = Math.min(least, other.mate.now.stock.onHand);
    return least;
  }

  /** Only what is put aside waits for mates: others had some that were left over, or went another way. */
  limit(ahead: Ahead | null): void {
    for (const { mate, place } of this.owable) {
      const { stock, want } = mate.now;
      if (want.owed > 0) stock.limit(want, ahead?.waitingFor(place) ?? 0);
    }
  }

  /** One of the parts that wait will have mates that were left over. */
  served(): void {
    for (const { mate } of this.owable) {
      const { stock, want } = mate.now;
      if (want.owed > 0) stock.limit(want, want.owed - 1);
    }
  }

  /** Those that something may wait for. */
  private get owable(): readonly Placed[] {
    return this.kit?.isQuiet ? this.loose : this.placed;
  }

  /** A part goes without those that are not on hand. */
  refuse(): void {
    for (const { now } of this.all) if (now.stock.onHand === 0) now.stock.refuse();
  }
}
