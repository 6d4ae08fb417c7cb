import { keyOf, neighbours, type Point } from '../../statistics/search/lattice.ts';
import { Check, type Word } from './check.ts';
import type { Looked } from './search.ts';
import type { Space } from './space.ts';
import type { Target } from './target.ts';
import type { Trials } from './trials.ts';

interface Settings {
  readonly space: Space;
  readonly targets: readonly Target[];
  readonly trials: Trials;
  readonly first: number;
  /** Probability that all that is said in all rounds is right. */
  readonly sure: number;
}

/** Runs before a check says anything; with fewer it would have to see many more in the end. */
const FIRST_STAGE = 10;

/** A choice moves by a step or two in each round, so that many more would mean that the search had gone astray. */
const MOST_ROUNDS = 8;

/**
 * Checks in rounds. The first is of all that was looked at; each further one is of the neighbours of the choice that are cheaper and
 * were not looked at yet, until there are none. Each round has seeds of its own, for what it checks was chosen by the runs
 * before, and half the error that the one before had, so that all together err no more often than stated.
 */
export class Rounds {
  private readonly settings: Settings;
  private readonly looked: Looked;
  private readonly checks: Check[] = [];

  constructor(settings: Settings, looked: Looked) {
    this.settings = settings;
    this.looked = looked;
  }

  /** The cheapest that is said to meet all targets; null as long as none is. */
  get chosen(): Point | null {
    const { space } = this.settings;
    const found = this.checks.flatMap(({ chosen }) => (chosen ? [chosen] : []));
    return found.sort((a, b) => space.costOf(a) - space.costOf(b))[0] ?? null;
  }

  get said(): ReadonlyMap<string, { readonly word: Word; readonly runs: number }> {
    return new Map(this.checks.flatMap(({ said }) => [...said]));
  }

  /** The last seed that was used. */
  get last(): number {
    return Math.max(this.settings.first, ...this.checks.map(({ last }) => last));
  }

  /** Whether it was found of all cheaper neighbours of the choice that they are none. */
  get neighboursChecked(): boolean {
    const { said } = this;
    const found = this.cheaperOf(this.chosen);
    return this.chosen !== null && found.every((point) => said.get(keyOf(point))?.word === 'misses');
  }

  /** @throws SpentError */
  async decide(whole: boolean): Promise<void> {
    const { space, sure } = this.settings;
    const { points, best, met } = this.looked;
    const upTo = met ? space.costOf(best!) : Number.POSITIVE_INFINITY;
    // All there are were chosen by no run, so that their first runs count.
    if (whole) return this.check([...points], { from: 1, error: 1 - sure, upTo });
    await this.check([...points], { from: this.last + 1, error: (1 - sure) / 2, upTo });
    for (let round = 2; round <= MOST_ROUNDS; round++) {
      const open = this.unseen();
      if (open.length === 0) return;
      await this.settings.trials.need(open, 1, this.settings.first);
      points.push(...open);
      const error = (1 - sure) / 2 ** round;
      await this.check(open, { from: this.last + 1, error, upTo: Number.POSITIVE_INFINITY });
    }
  }

  /** Neighbours of the choice that cost less and were not looked at. */
  private unseen(): Point[] {
    const known = new Set(this.looked.points.map(keyOf));
    return this.cheaperOf(this.chosen).filter((point) => !known.has(keyOf(point)));
  }

  private cheaperOf(chosen: Point | null): Point[] {
    const { space } = this.settings;
    if (!chosen) return [];
    const cost = space.costOf(chosen);
    return neighbours(chosen, space.counts).filter((point) => space.costOf(point) < cost);
  }

  private async check(
    points: readonly Point[],
    how: { readonly from: number; readonly error: number; readonly upTo: number },
  ): Promise<void> {
    const first = Math.max(this.settings.first, FIRST_STAGE);
    const check = new Check({ ...this.settings, ...how, first }, points);
    this.checks.push(check);
    await check.decide();
  }
}
