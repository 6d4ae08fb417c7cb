import { keyOf, type Point } from '../../statistics/search/lattice.ts';
import { TargetCheck } from '../../statistics/selection/target-check.ts';
import type { Space } from './space.ts';
import type { Target } from './target.ts';
import type { Trials } from './trials.ts';

/**
 * What is said of sizes. `misses`: at least one target is missed, or met by less than is worth having; `no value`: a run gave
 * no value of a target, so that nothing can be said.
 */
export type Word = 'meets' | 'misses' | 'undecided' | 'not checked' | 'no value';

interface Checking {
  readonly space: Space;
  readonly targets: readonly Target[];
  readonly trials: Trials;
  /** Runs before anything is said. */
  readonly first: number;
  /** The first seed. Where points were chosen by earlier runs it lies behind the seeds of those. */
  readonly from: number;
  /** Probability that anything that is said is wrong. */
  readonly error: number;
  /** Up to which cost a choice is expected, so that dearer ones need no run; Infinity where none is. */
  readonly upTo: number;
}

/** Runs that one go adds, shared among those still undecided. */
const GO = 32;
const MOST_EACH = 8;

/** One size under check. */
class Candidate {
  readonly point: Point;
  readonly cost: number;
  /** Runs used. */
  runs = 0;
  word: Word = 'not checked';
  private readonly checks: readonly TargetCheck[];

  constructor(point: Point, cost: number, checks: readonly TargetCheck[]) {
    this.point = point;
    this.cost = cost;
    this.checks = checks;
  }

  get isOpen(): boolean {
    return this.word === 'not checked' || this.word === 'undecided';
  }

  /** @param values by target, of one run more */
  add(values: readonly number[]): void {
    if (!this.isOpen) return;
    this.runs++;
    this.word = 'undecided';
    if (values.some(Number.isNaN)) {
      this.word = 'no value';
      return;
    }
    for (const [i, check] of this.checks.entries()) check.add(values[i]!);
    const words = this.checks.map(({ word }) => word);
    if (words.includes('misses')) this.word = 'misses';
    else if (words.every((word) => word === 'meets')) this.word = 'meets';
  }
}

/** What is said of each of some choices of sizes, and by how many runs. */
export class Check {
  private readonly checking: Checking;
  /** In the order of their cost. */
  private readonly candidates: readonly Candidate[];

  /** All that is said holds together by Bonferroni's inequality over all sizes and targets. */
  constructor(checking: Checking, points: readonly Point[]) {
    this.checking = checking;
    const { space, targets, first } = checking;
    const error = checking.error / (points.length * targets.length);
    this.candidates = points
      .map((point) => {
        const checks = targets.map(
          ({ better, value, worth }) =>
            new TargetCheck({ better, target: value, worth, error, firstStage: first }),
        );
        return new Candidate(point, space.costOf(point), checks);
      })
      .sort((a, b) => a.cost - b.cost);
  }

  /** The cheapest that is said to meet all targets; null as long as none is. */
  get chosen(): Point | null {
    return this.candidates.find(({ word }) => word === 'meets')?.point ?? null;
  }

  /** Said of each, and by how many runs. */
  get said(): ReadonlyMap<string, { readonly word: Word; readonly runs: number }> {
    return new Map(this.candidates.map(({ point, word, runs }) => [keyOf(point), { word, runs }]));
  }

  /** The last seed that was used. */
  get last(): number {
    return this.checking.from - 1 + Math.max(0, ...this.candidates.map(({ runs }) => runs));
  }

  /**
   * Goes on until one is chosen and all that are cheaper are decided, or none is left to choose.
   * @throws SpentError
   */
  async decide(): Promise<void> {
    const { first } = this.checking;
    for (let open = this.open(); open.length > 0; open = this.open()) {
      const behind = open.filter(({ runs }) => runs < first);
      if (behind.length > 0) await this.run(behind, first);
      else await this.run(open, Math.min(MOST_EACH, Math.max(1, Math.floor(GO / open.length))));
    }
  }

  /** Those that must be decided now: the ones cheaper than the choice, and up to where a choice may be expected. */
  private open(): Candidate[] {
    const chosen = this.candidates.find(({ word }) => word === 'meets');
    const open = this.candidates.filter(({ isOpen }) => isOpen);
    if (chosen) return open.filter(({ cost }) => cost < chosen.cost);
    const near = open.filter(({ cost }) => cost <= this.checking.upTo);
    return near.length > 0 ? near : open.filter(({ cost }) => cost === open[0]!.cost);
  }

  private async run(candidates: readonly Candidate[], more: number): Promise<void> {
    const { trials, targets, from } = this.checking;
    // Candidates of one go have had as many runs; each is fed its runs in the order of the seeds.
    for (const runs of new Set(candidates.map((one) => one.runs))) {
      const same = candidates.filter((one) => one.runs === runs);
      const [begin, end] = [from + runs, from + runs + more - 1];
      await trials.need(
        same.map(({ point }) => point),
        begin,
        end,
      );
      for (const one of same)
        for (let seed = begin; seed <= end && one.isOpen; seed++)
          one.add(targets.map((_, i) => trials.valuesOf(one.point, i, seed, seed)[0]!));
    }
  }
}
