import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Feature } from '../features.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { Tally } from '../tally.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** What a correction that looks first can bring in. */
interface Reach {
  /** The largest deviation below and above the aim that it can bring in, mm. */
  readonly below: number;
  readonly above: number;
  /** Designed seconds for each mm of deviation that it removes. */
  readonly pace: number;
}

export interface Correction {
  readonly feature: Feature;
  readonly removes: number;
  readonly ownSd: number;
  readonly z: Sampler;
  /** Null when the feature is corrected at every visit, wherever it stands. */
  readonly reach: Reach | null;
}

export interface ReworkParts {
  readonly time: VisitTime;
  readonly parts: PartTable;
  readonly next: Place;
  readonly scrap: Place;
  readonly tally: Tally;
}

/**
 * Brings features nearer to their aim and adds a variation of its own. Readings taken before no longer hold. Where a
 * correction has a reach, what is within its limits is left alone, and a part that is out of reach is scrapped.
 */
export class Rework extends Work {
  private readonly on: ReworkParts;
  private readonly corrections: readonly Correction[];
  private readonly looks: boolean;
  /** By machine: whether the part on it is out of reach. */
  private readonly hopeless: boolean[] = [];

  constructor(on: ReworkParts, corrections: readonly Correction[]) {
    super(on.time);
    this.on = on;
    this.corrections = corrections;
    this.looks = corrections.some(({ reach }) => reach !== null);
  }

  override begin(machine: Machine): boolean {
    if (!super.begin(machine)) return false;
    if (this.looks) this.look(machine);
    return true;
  }

  finish(machine: Machine): void {
    if (this.looks) machine.outlets[0] = this.hopeless[machine.slot] ? this.on.scrap : this.on.next;
    if (this.looks && this.hopeless[machine.slot]) this.on.tally.hopeless++;
    else this.correct(machine.load[0]!);
  }

  /** Judges whether the part can be brought in, and if so, adds the time for it to the cycle. */
  private look(machine: Machine): void {
    let added = 0;
    let hopeless = false;
    for (const { feature, reach, removes } of this.corrections) {
      if (reach === null) continue;
      const off = this.offOf(machine.load[0]!, feature);
      if (isWithin(feature, off)) continue;
      if (off > reach.above || -off > reach.below) hopeless = true;
      added += reach.pace * removes * Math.abs(off);
    }
    this.hopeless[machine.slot] = hopeless;
    if (!hopeless) machine.cycle += added;
  }

  private correct(row: number): void {
    const { parts } = this.on;
    for (const { feature, removes, ownSd, z, reach } of this.corrections) {
      const off = this.offOf(row, feature);
      if (reach !== null && isWithin(feature, off)) continue;
      parts.set(row, feature.truth, feature.spec.aim + off * (1 - removes) + ownSd * z());
      parts.set(row, feature.reading, Number.NaN);
    }
  }

  /** How far the true value is above its aim, mm. */
  private offOf(row: number, { truth, spec }: Feature): number {
    return this.on.parts.get(row, truth) - spec.aim;
  }
}

/** Whether a feature that is `off` its aim, mm, is within its limits; without limits only what is not off is. */
function isWithin({ spec }: Feature, off: number): boolean {
  const { limits, aim } = spec;
  return limits === null ? off === 0 : aim + off >= limits.lower && aim + off <= limits.upper;
}
