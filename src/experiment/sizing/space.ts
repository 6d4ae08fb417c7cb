import type { Change } from '../../scenario/changed.ts';
import { parseChanged } from '../../scenario/parse.ts';
import type { Raw } from '../../scenario/raw.ts';
import { type SizeSpec, sizeAt } from '../../scenario/sizings.ts';
import { type Point, pointsIn } from '../../statistics/search/lattice.ts';

/** All the sizes that are looked at, as a lattice. */
export class Space {
  readonly sizes: readonly SizeSpec[];
  /** Along each side, how many there are. */
  readonly counts: readonly number[];
  /** What a step along each side costs. */
  readonly stepCosts: readonly number[];

  constructor(sizes: readonly SizeSpec[]) {
    this.sizes = sizes;
    this.counts = sizes.map(({ count }) => count);
    this.stepCosts = sizes.map(({ cost, step }) => cost * step);
  }

  get points(): number {
    return pointsIn(this.counts);
  }

  /** What stands at the places of each size. */
  valuesOf(point: Point): (number | string)[] {
    return this.sizes.map((size, d) => sizeAt(size, point[d]!));
  }

  /** What all sizes cost together. */
  costOf(point: Point): number {
    const sum = this.sizes.reduce(
      (sum, { least, step, cost }, d) => sum + cost * (least + point[d]! * step),
      0,
    );
    // Costs that are equal on paper are so here.
    return Number(sum.toPrecision(12));
  }

  changesOf(point: Point): Change[] {
    const values = this.valuesOf(point);
    return this.sizes.flatMap(({ at }, d) => at.map((place): Change => ({ at: place, is: values[d]! })));
  }

  /**
   * Whether the scenario takes all the smallest, all the largest, and each at its end while the others are at theirs.
   * @throws ChangeError
   */
  refuseUnfit(raw: Raw): void {
    const least = this.counts.map(() => 0);
    const most = this.counts.map((count) => count - 1);
    const mixed = this.counts.flatMap((_, d) => [
      least.map((x, side) => (side === d ? most[d]! : x)),
      most.map((x, side) => (side === d ? least[d]! : x)),
    ]);
    for (const point of [least, most, ...mixed]) parseChanged(raw, this.changesOf(point));
  }
}
