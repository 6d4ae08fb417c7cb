import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Feature } from '../features.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

export interface Correction {
  readonly feature: Feature;
  readonly removes: number;
  readonly ownSd: number;
  readonly z: Sampler;
}

/** Brings features nearer to their aim and adds a variation of its own. Readings taken before no longer hold. */
export class Rework extends Work {
  private readonly parts: PartTable;
  private readonly corrections: readonly Correction[];

  constructor(time: VisitTime, parts: PartTable, corrections: readonly Correction[]) {
    super(time);
    this.parts = parts;
    this.corrections = corrections;
  }

  finish(machine: Machine): void {
    const row = machine.load[0]!;
    for (const { feature, removes, ownSd, z } of this.corrections) {
      const { aim } = feature.spec;
      const off = this.parts.get(row, feature.truth) - aim;
      this.parts.set(row, feature.truth, aim + off * (1 - removes) + ownSd * z());
      this.parts.set(row, feature.reading, Number.NaN);
    }
  }
}
