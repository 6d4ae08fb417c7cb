import { latinHypercube } from '../designs/latin-hypercube.ts';
import { keyOf, neighbours, type Point, pointsIn } from './lattice.ts';
import { nearerTo, walked } from './promising.ts';

export interface SearchSettings {
  /** Along each side, how many points there are. */
  readonly counts: readonly number[];
  /** What a step along each side costs; not negative. */
  readonly costs: readonly number[];
  /** How many points are asked for at a time. */
  readonly batch: number;
  /** Points beyond which it ends. */
  readonly most: number;
  /** Numbers in [0, 1). */
  readonly uniform: () => number;
}

/** A point with what was seen of it. */
interface Visited {
  readonly point: Point;
  readonly cost: number;
  /** 0 where it seems to meet all targets, else by how much it seems to miss them. */
  readonly short: number;
}

/** Walks that end where all was visited before a batch is given up. */
const TRIES = 40;

/**
 * Looks for the cheapest point of a lattice that meets targets which only a simulation tells, after L. J. Hong and B. L. Nelson
 * (2006), Operations Research 54, 115-129: points are drawn at random
 * from the most promising area, the one nearer to the best point so far than to any other visited, until all neighbours
 * of the best are visited.
 *
 * It differs from theirs in what is known here: costs are exact, so that once a point seems to meet the targets only cheaper ones are
 * drawn and only cheaper neighbours need a visit; it begins with a Latin hypercube; a neighbour may lie a step off along
 * two sides, for a step up of what is cheap may pay for a step down of what is dear; and a point is judged by the runs
 * it was given at first, for the choice is made by a check of its own. What it ends with is the best of its neighbours as
 * far as these runs tell, and need not be the best of all.
 */
export class LatticeSearch {
  private readonly settings: SearchSettings;
  private readonly visited = new Map<string, Visited>();
  private found: Visited | null = null;
  private begun = false;

  constructor(settings: SearchSettings) {
    this.settings = settings;
  }

  /** The best point so far; null before any. */
  get best(): Point | null {
    return this.found?.point ?? null;
  }

  /** Whether the best point seems to meet all targets. */
  get met(): boolean {
    return this.found?.short === 0;
  }

  /** The points to be looked at next, none of them visited; none where it has ended. */
  next(): Point[] {
    const { most } = this.settings;
    const asked = this.begun ? this.further() : this.start();
    this.begun = true;
    return asked.slice(0, Math.max(0, most - this.visited.size));
  }

  /** What was seen of a point. */
  tell(point: Point, short: number): void {
    const seen = { point, cost: this.costOf(point), short };
    this.visited.set(keyOf(point), seen);
    if (this.found === null || isBetter(seen, this.found)) this.found = seen;
  }

  private costOf(point: Point): number {
    const sum = point.reduce((sum, x, d) => sum + x * this.settings.costs[d]!, 0);
    // Costs that are equal on paper are so here.
    return Number(sum.toPrecision(12));
  }

  private start(): Point[] {
    const { counts, batch, uniform } = this.settings;
    const spread = latinHypercube(2 * batch, counts.length, uniform);
    return unique([
      counts.map(() => 0),
      counts.map((count) => count - 1),
      ...spread.map((at) => at.map((x, d) => Math.floor(x * counts[d]!))),
    ]);
  }

  /** Whether a visit could lead further than the best point. */
  private isOpen(point: Point): boolean {
    const { found, visited } = this;
    return !visited.has(keyOf(point)) && (found!.short > 0 || this.costOf(point) < found!.cost);
  }

  private further(): Point[] {
    const { counts, batch, uniform, costs } = this.settings;
    const { point: best, short, cost } = this.found!;
    const others = [...this.visited.values()].filter(({ point }) => point !== best);
    const bounds = others.map(({ point }) => nearerTo(best, point));
    if (short === 0) bounds.push({ factors: costs, limit: cost });
    const drawn = new Map<string, Point>();
    for (let tries = 0; tries < TRIES && drawn.size < batch; tries++) {
      const point = walked(best, counts, bounds, uniform);
      if (this.isOpen(point)) drawn.set(keyOf(point), point);
    }
    if (drawn.size > 0 || pointsIn(counts) === this.visited.size) return [...drawn.values()];
    return unique(neighbours(best, counts)).filter((point) => this.isOpen(point));
  }
}

const unique = (points: readonly Point[]): Point[] => [
  ...new Map(points.map((point) => [keyOf(point), point])).values(),
];

function isBetter(one: Visited, other: Visited): boolean {
  if (one.short !== other.short) return one.short < other.short;
  return one.cost < other.cost;
}
