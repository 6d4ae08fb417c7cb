import { normalBlocks, standardNormal } from '../kernel/distributions/normal.ts';
import type { Streams } from '../kernel/streams.ts';
import type { FeatureSpec } from '../scenario/parts.ts';
import { designed } from './designed.ts';
import { FromSheet } from './from-sheet.ts';
import { MixedDraws } from './mixed.ts';
import type { PartTable } from './part-table.ts';
import type { Stock } from './stock.ts';
import type { UnsettledFeature } from './unsettled.ts';

/** One dimension of the part: where its true value and its reading stand, and how it comes about. */
export class Feature {
  readonly spec: FeatureSpec;
  /** Column of the true value; before the feature is made it holds the part's own deviation. */
  readonly truth: number;
  /** Column of the latest reading kept under the part's mark; NaN when there is none. */
  readonly reading: number;
  /** What a sheet's parts share; null where it does not vary. */
  readonly sheet: MixedDraws | null;
  /** What it has of the sheet that parts are formed from, of the standard kind. */
  readonly standard: FromSheet;
  /** The middle of the feature as designed, mm. */
  readonly base: number;
  /** Looks at what is made of it; null while nobody asks. */
  made: { add(value: number): void } | null = null;
  /** Whether it is made by cutting, not by forming. */
  isCut = false;
  /** What disturbs it; null where nothing does. */
  upset: UnsettledFeature | null = null;

  constructor(spec: FeatureSpec, parts: PartTable, streams: Streams, sheet: Stock | null) {
    this.spec = spec;
    const z = (purpose: string) => standardNormal(streams.of(`feature/${spec.name}/${purpose}`));
    this.truth = parts.luck(normalBlocks(streams.of(`feature/${spec.name}/own`), spec.ownSd));
    this.reading = parts.column(Number.NaN);
    this.sheet = spec.sheetSd > 0 ? new MixedDraws(spec.sheetSd, z('sheet')) : null;
    this.standard = new FromSheet(spec, sheet);
    this.base = designed(spec);
  }

  /** What all parts of a sheet have of this feature, mm: drawn once a sheet. `lot` is the sheet's. */
  shared(from: FromSheet, lot: number): number {
    return from.with(this.sheet !== null ? this.sheet.draw() : 0, lot);
  }

  cavity(i: number): number {
    return this.spec.cavities?.[i] ?? 0;
  }
}
