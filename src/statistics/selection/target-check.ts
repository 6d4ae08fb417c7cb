import type { Better } from '../comparing/better.ts';
import { KimNelson } from './kim-nelson.ts';

/** What is said of a system's mean against a target. */
export type TargetWord = 'meets' | 'misses';

export interface TargetSettings {
  /** Whether the mean is to be at least the target, `higher`, or at most. */
  readonly better: Better;
  readonly target: number;
  /** Meeting the target by less than this may be taken for missing it; above 0, in the unit of the target. */
  readonly worth: number;
  /** Chance of a wrong word, above 0 and below 1/2. */
  readonly error: number;
  /** Runs before anything is said, 2 or more. */
  readonly firstStage: number;
}

/**
 * Checks run by run whether a mean meets a target. `meets` is wrong, the mean being short of the target, with probability at
 * most `error`; so is `misses`, where the mean meets the target by `worth` or more. Between the two either word is right.
 *
 * It is the check of a constraint of S. Andradottir and S.-H. Kim (2010), Fully sequential procedures for comparing constrained
 * systems via simulation, Naval Research Logistics 57, 403-421 (from memory), for a limit in the middle between the target and
 * the target met by `worth`, with half of `worth` as its tolerance. That is KN with one system against a constant. Values of
 * runs are taken to be normal and independent; several checks may depend on each other in any way, and hold together by
 * Bonferroni's inequality when each is given its share of the error.
 */
export class TargetCheck {
  private readonly selection: KimNelson;
  private readonly limit: number;

  /** @throws RangeError for settings out of their range */
  constructor({ better, target, worth, error, firstStage }: TargetSettings) {
    this.limit = target + (better === 'higher' ? worth : -worth) / 2;
    this.selection = new KimNelson({
      ...{ systems: 2, better, worth: worth / 2, confidence: 1 - error, firstStage },
      most: Number.MAX_SAFE_INTEGER,
    });
  }

  get runs(): number {
    return this.selection.runs;
  }

  /** Null as long as more runs are needed. */
  get word(): TargetWord | null {
    const { selected } = this.selection;
    return selected && (selected.best === 0 ? 'meets' : 'misses');
  }

  /** The value of one run more; after the end it is not looked at. */
  add(value: number): void {
    if (this.word === null) this.selection.add([value, this.limit]);
  }
}
