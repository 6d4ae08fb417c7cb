import type { FeatureSpec } from '../scenario/parts.ts';
import type { Stock } from './stock.ts';
import type { Variation } from './variation.ts';

/** What a feature has of the stock of sheet that parts are formed from. */
export class FromSheet {
  /** What parts of a delivery share; null where it does not vary. */
  readonly lots: Variation | null;
  /** How the shrinkage differs from delivery to delivery; null where the feature does not shrink. */
  private readonly shrinks: Variation | null;
  private readonly mould: number;
  /** How much larger it is than of the standard sheet, besides what it follows, mm. */
  private readonly shift: number;

  constructor({ name, lotSd, mould }: FeatureSpec, sheet: Stock | null, shift = 0) {
    this.lots = lotSd > 0 && sheet ? sheet.variation(`feature ${name}`, lotSd, 0) : null;
    this.shrinks = mould === undefined ? null : (sheet?.shrinkage ?? null);
    this.mould = mould ?? 0;
    this.shift = shift;
  }

  /** What parts have of the feature by their sheet, mm, and by its delivery. */
  with(ofSheet: number, lot: number): number {
    const common = ofSheet + this.shift + (this.lots !== null ? this.lots.ofLot(lot) : 0);
    return this.shrinks === null ? common : common - this.mould * this.shrinks.ofLot(lot);
  }
}
