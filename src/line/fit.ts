import type { Feature } from './features.ts';
import type { Flaw } from './flaw.ts';
import type { PartTable } from './part-table.ts';

/** One mating pair. Clearance is hole minus shaft. */
export interface Pair {
  readonly feature: Feature;
  /** Which of the mate's features, in the order of a hand's mates, and what it should be, mm. */
  readonly mate: number;
  readonly mateAim: number;
  readonly partIsHole: boolean;
  readonly least: number;
  readonly most: number;
}

export const clearance = (pair: Pair, part: number, mate: number): number =>
  pair.partIsHole ? part - mate : mate - part;

/** Distance of a clearance from the nearer limit, mm; negative outside the limits. */
export const margin = (pair: Pair, gap: number): number => Math.min(gap - pair.least, pair.most - gap);

/** Judges how a part and its mates go together, and holds the latest judgement. */
export class Fit {
  /** Clearance that lacks at the tightest pair, and that is too much at the loosest, mm; 0 where none is. */
  missing = 0;
  excess = 0;
  /** Whether the part has a flaw, with which nothing fits. */
  flawed = false;
  private readonly parts: PartTable;
  private readonly pairs: readonly Pair[];
  private readonly flaw: Flaw | null;

  constructor(parts: PartTable, pairs: readonly Pair[], flaw: Flaw | null) {
    this.parts = parts;
    this.pairs = pairs;
    this.flaw = flaw;
  }

  /** @param mates true sizes of the mates' features, mm */
  judge(row: number, mates: Float64Array): void {
    this.missing = 0;
    this.excess = 0;
    this.flawed = this.flaw?.isAt(row) === true;
    for (const pair of this.pairs) {
      const gap = clearance(pair, this.parts.get(row, pair.feature.truth), mates[pair.mate]!);
      this.missing = Math.max(this.missing, pair.least - gap);
      this.excess = Math.max(this.excess, gap - pair.most);
    }
  }

  /** Which pair lacks most clearance; of several the first. */
  tightest(row: number, mates: Float64Array): number {
    return this.farthest(row, mates, (pair, gap) => pair.least - gap);
  }

  /** Which pair has most clearance too much; of several the first. */
  loosest(row: number, mates: Float64Array): number {
    return this.farthest(row, mates, (pair, gap) => gap - pair.most);
  }

  private farthest(row: number, mates: Float64Array, by: (pair: Pair, gap: number) => number): number {
    const beyond = this.pairs.map((pair) =>
      by(pair, clearance(pair, this.parts.get(row, pair.feature.truth), mates[pair.mate]!)),
    );
    return beyond.indexOf(Math.max(...beyond));
  }

  get fits(): boolean {
    return this.missing === 0 && this.excess === 0 && !this.flawed;
  }
}
