import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Hand } from './hand.ts';
import type { Machine } from './machine.ts';
import type { Patience } from './patience.ts';
import type { Rank } from './ranks.ts';

/** Parts that wait, the oldest first. */
interface Waiting {
  readonly count: number;
  peek(i: number): number;
}

export interface Choice {
  /** How many of the oldest are compared. */
  readonly among: number;
  readonly rank: Rank;
  /** The highest there can be. */
  readonly highest: number;
  /** Time that reading and choosing add to the cycle, s. */
  readonly takes: number;
  /** Repeatability of the mates' readings, mm, and its deviates. */
  readonly repeatability: number;
  readonly z: Sampler;
  /** Null where mates never wait. */
  readonly patience: Patience | null;
}

/** Chooses a waiting part for the mates in hand, going by readings of both. */
export class Matching {
  readonly takes: number;
  private readonly how: Choice;

  constructor(how: Choice) {
    this.how = how;
    this.takes = how.takes;
  }

  /** Takes readings of mates just taken in hand. */
  read({ mate, mateRead }: Hand): void {
    const { repeatability, z } = this.how;
    for (let k = 0; k < mate.length; k++) mateRead[k] = mate[k]! + repeatability * z();
  }

  /**
   * The place of the part that ranks highest, the oldest of equals, or -1 to wait for another to come. It waits only
   * while there is room for more to compare and none there promises to fit, and not beyond its patience: so whatever
   * cannot be matched is tried in the end.
   */
  choose(waiting: Waiting, hand: Hand, machine: Machine): number {
    const { among, rank, highest, patience } = this.how;
    const seen = Math.min(waiting.count, among);
    let best = 0;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < seen && most < highest; i++) {
      const own = rank(waiting.peek(i), hand.mateRead);
      if (own > most) {
        most = own;
        best = i;
      }
    }
    if (patience === null) return best;
    if (most < 0 && seen < among && patience.lasts(machine)) return -1;
    patience.over(machine);
    return best;
  }
}
