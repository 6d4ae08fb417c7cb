import { sampleVariance } from 'simple-statistics';
import { type Better, signOf } from '../comparing/better.ts';
import { checkSelection } from './constant.ts';

/** The constants eta and h^2 of the procedure for c = 1. */
export interface Constants {
  readonly eta: number;
  readonly square: number;
}

export function kimNelsonConstants(systems: number, firstStage: number, confidence: number): Constants {
  checkSelection(systems, firstStage, confidence);
  const f = firstStage - 1;
  const eta = (((2 * (1 - confidence)) / (systems - 1)) ** (-2 / f) - 1) / 2;
  return { eta, square: 2 * eta * f };
}

/** How far a mean over `runs` may lie behind another and stay, when their paired difference has this sample variance. */
export const continuation = (square: number, variance: number, worth: number, runs: number): number =>
  Math.max(0, ((square * variance) / worth ** 2 - runs) * (worth / (2 * runs)));

/** The last number of runs at which two systems may both stay. */
export const lastStage = (square: number, variance: number, worth: number): number =>
  Math.floor((square * variance) / worth ** 2);

export interface KimNelsonSettings {
  /** How many systems there are, 2 or more. */
  readonly systems: number;
  readonly better: Better;
  /** The smallest lead worth finding, above 0: the indifference zone. */
  readonly worth: number;
  /** Probability that the best is chosen if it leads all others by `worth` or more; above 1/systems, below 1. */
  readonly confidence: number;
  /** Runs of each system before any is left out, 2 or more; 10 or more is common practice. */
  readonly firstStage: number;
  /** Runs of each system after which it ends undecided; at least the first stage. */
  readonly most: number;
}

/** How a selection ended. */
export interface Selected {
  readonly how: 'one left' | 'tied at the last stage' | 'most runs reached';
  /** The system chosen, the first of those tied; where the most runs were reached, the one ahead, for which nothing is stated. */
  readonly best: number;
  /** Stated probability that it is the best if it leads all others by `worth`; null where the most runs were reached. */
  readonly confidence: number | null;
}

/**
 * The fully sequential selection KN: after the first stage one run more of each system that is left, and out goes who lies too
 * far behind any other. It may be fed runs under common random numbers: the systems of one stage may depend on each other
 * in any way, the stages not; values are taken to be normal. S.-H. Kim and B. L. Nelson (2001), A fully sequential procedure for
 * indifference-zone selection in simulation, ACM TOMACS 11, 251-273; c = 1.
 */
export class KimNelson {
  private readonly settings: KimNelsonSettings;
  private readonly sign: 1 | -1;
  private readonly square: number;
  private readonly first: number[][];
  /** Sums of values, more being better. */
  private readonly sums: number[];
  /** Sample variances of the paired differences of the first stage. */
  private variances: readonly (readonly number[])[] = [];
  private left: number[];
  private stages = 0;
  private found: Selected | null = null;

  /** @throws RangeError for settings out of their range */
  constructor(settings: KimNelsonSettings) {
    const { systems, firstStage, confidence, worth, most, better } = settings;
    this.square = kimNelsonConstants(systems, firstStage, confidence).square;
    if (!(worth > 0)) throw new RangeError(`a lead of ${worth} worth finding; it must be above 0`);
    if (!(most >= firstStage))
      throw new RangeError(`at most ${most} runs; the first stage takes ${firstStage}`);
    this.settings = settings;
    this.sign = signOf(better);
    this.first = Array.from({ length: systems }, () => []);
    this.sums = this.first.map(() => 0);
    this.left = this.first.map((_, i) => i);
  }

  /** The systems that are left, by number from 0: those of which the next stage needs a run. */
  get survivors(): readonly number[] {
    return this.left;
  }

  /** Runs of each system that is left. */
  get runs(): number {
    return this.stages;
  }

  /** Null as long as there is more to run. */
  get selected(): Selected | null {
    return this.found;
  }

  /** The most runs of a system that it may take in all, as it looks now; null before the end of the first stage. */
  get mostNeeded(): number | null {
    if (this.variances.length === 0) return null;
    return this.found
      ? this.stages
      : Math.min(Math.max(this.stages, this.lastOfThoseLeft() + 1), this.settings.most);
  }

  /**
   * One run of each system that is left.
   * @param values by system; those of systems that are out are not looked at
   * @throws RangeError where a value of a system that is left is missing or not finite, or when it has ended
   */
  add(values: readonly (number | null)[]): void {
    if (this.found) throw new RangeError('the selection has ended');
    const missing = this.left.find((i) => !Number.isFinite(values[i] ?? Number.NaN));
    if (missing !== undefined)
      throw new RangeError(`no value of system ${missing}, which is still among those left`);
    const begins = this.stages < this.settings.firstStage;
    for (const i of this.left) {
      const value = this.sign * values[i]!;
      this.sums[i]! += value;
      if (begins) this.first[i]!.push(value);
    }
    this.stages++;
    if (this.stages < this.settings.firstStage) return;
    if (begins) {
      this.variances = this.first.map((own) =>
        this.first.map((other) => sampleVariance(own.map((x, run) => x - other[run]!))),
      );
    }
    this.screen();
  }

  private screen(): void {
    const { worth, most, confidence } = this.settings;
    const { stages, sums, square, variances } = this;
    const mean = (i: number) => sums[i]! / stages;
    this.left = this.left.filter((i) =>
      this.left.every((j) => mean(i) >= mean(j) - continuation(square, variances[i]![j]!, worth, stages)),
    );
    const best = this.left.reduce((ahead, i) => (sums[i]! > sums[ahead]! ? i : ahead));
    if (this.left.length === 1) this.found = { how: 'one left', best, confidence };
    // After the last stage no one may lie behind, so that those left are level.
    else if (stages > this.lastOfThoseLeft())
      this.found = { how: 'tied at the last stage', best, confidence };
    else if (stages >= most) this.found = { how: 'most runs reached', best, confidence: null };
  }

  /** The last stage at which any two of those left may both stay. */
  private lastOfThoseLeft(): number {
    const { square, variances, left } = this;
    const { worth } = this.settings;
    let last = 0;
    for (const i of left)
      for (const j of left) if (i !== j) last = Math.max(last, lastStage(square, variances[i]![j]!, worth));
    return last;
  }
}
