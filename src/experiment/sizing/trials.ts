import type { Outcome } from '../../line/outcome.ts';
import { keyOf, type Point } from '../../statistics/search/lattice.ts';
import type { Task } from '../worker.ts';
import type { Space } from './space.ts';
import type { Target } from './target.ts';

/** What ended the runs before all that were wanted were done. */
export type Spent = 'runs' | 'time';

/** There are no runs left, or no time. */
export class SpentError extends Error {
  readonly by: Spent;
  constructor(by: Spent) {
    super(`the ${by} are spent`);
    this.by = by;
  }
}

export interface TrialSettings {
  readonly space: Space;
  readonly targets: readonly Target[];
  readonly policy: string;
  /** Runs in all. */
  readonly atMost: number;
  /** Whether there is time left. */
  readonly inTime: () => boolean;
  /** Does runs and gives their outcomes in the same order. */
  readonly run: (tasks: readonly Task[]) => Promise<Outcome[]>;
}

/** Runs are asked for in goes that take about as long, ms, so that time that is up is noticed. */
const GO = 1000;
const FIRST_GO = 16;
const MOST_AT_ONCE = 512;

/** The runs of sizes by seed. Which are done, and in which order, depends on what is asked for alone. */
export class Trials {
  private readonly settings: TrialSettings;
  /** By point and seed, the value of each target; not a number where the run gives none. */
  private readonly values = new Map<string, Map<number, readonly number[]>>();
  private go = FIRST_GO;
  private count = 0;

  constructor(settings: TrialSettings) {
    this.settings = settings;
  }

  /** Runs done so far. */
  get runs(): number {
    return this.count;
  }

  /**
   * Sees to it that each of the points has runs under seeds `from` to `to`, seed by seed.
   * @throws SpentError
   */
  async need(points: readonly Point[], from: number, to: number): Promise<void> {
    const missing: { point: Point; seed: number }[] = [];
    for (let seed = from; seed <= to; seed++)
      for (const point of points) if (!this.of(point).has(seed)) missing.push({ point, seed });
    for (let at = 0; at < missing.length; ) {
      const left = this.settings.atMost - this.count;
      if (left <= 0) throw new SpentError('runs');
      // The first go is done whatever the time, so that a report of what time sufficed for can be made again.
      if (this.count > 0 && !this.settings.inTime()) throw new SpentError('time');
      const now = missing.slice(at, at + Math.min(this.go, left));
      await this.do(now);
      at += now.length;
    }
  }

  /** Values of a target at a point under seeds `from` to `to`, all of which were run. */
  valuesOf(point: Point, target: number, from: number, to: number): number[] {
    const own = this.of(point);
    return Array.from({ length: to - from + 1 }, (_, i) => own.get(from + i)![target]!);
  }

  has(point: Point, from: number, to: number): boolean {
    const own = this.of(point);
    for (let seed = from; seed <= to; seed++) if (!own.has(seed)) return false;
    return true;
  }

  private of(point: Point): Map<number, readonly number[]> {
    const key = keyOf(point);
    if (!this.values.has(key)) this.values.set(key, new Map());
    return this.values.get(key)!;
  }

  private async do(runs: readonly { readonly point: Point; readonly seed: number }[]): Promise<void> {
    const { space, policy, targets, run } = this.settings;
    const begun = performance.now();
    const outcomes = await run(
      runs.map(({ point, seed }) => ({
        ...{ policy, seed },
        variant: { disturbed: true, changes: space.changesOf(point) },
      })),
    );
    for (const [i, { point, seed }] of runs.entries())
      this.of(point).set(
        seed,
        targets.map((target) => target.of(outcomes[i]!) ?? Number.NaN),
      );
    this.count += runs.length;
    const took = performance.now() - begun;
    if (took < GO) this.go = Math.min(2 * this.go, MOST_AT_ONCE);
    else if (took > 2 * GO) this.go = Math.max(1, Math.floor(this.go / 2));
  }
}
