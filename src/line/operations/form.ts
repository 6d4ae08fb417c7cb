import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { standardNormal } from '../../kernel/distributions/normal.ts';
import type { Streams } from '../../kernel/streams.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import type { StockSpec } from '../../scenario/stocks.ts';
import type { Feature } from '../features.ts';
import type { Machine } from '../machine.ts';
import type { Setting } from '../setting.ts';
import type { Variation } from '../stock.ts';
import { Source, type SourceParts } from './source.ts';

interface Controlled {
  readonly setting: Setting;
  /** Column that remembers what a policy had added when the part was formed. */
  readonly remembered: number;
  readonly cycleSd: number;
  readonly z: Sampler;
  deviation: number;
}

/**
 * Forms a sheet into several parts. They share the sheet's thickness, its lot's terms and the settings of the
 * cycle, which count as they are when the sheet is loaded, and differ by cavity and by their own variation.
 */
export class Form extends Source {
  private readonly features: readonly Feature[];
  private readonly settings = new Map<string, Controlled>();
  private readonly heating: number;
  private readonly thickness: { nominal: number; variation: Variation } | null = null;
  private readonly here: string;

  constructor(
    on: SourceParts,
    spec: SpecOf<'form'> & { readonly name: string },
    sheet: StockSpec,
    settings: ReadonlyMap<string, { setting: Setting; remembered: number }>,
    features: readonly Feature[],
    streams: Streams,
  ) {
    super(on, spec.perSheet);
    this.features = features;
    this.here = spec.name;
    this.heating = spec.heating?.value ?? 0;
    for (const { name, cycleSd } of spec.settings ?? []) {
      const z = standardNormal(streams.of(`setting/${name}/cycle`));
      this.settings.set(name, { ...settings.get(name)!, cycleSd: cycleSd?.value ?? 0, z, deviation: 0 });
    }
    if (sheet.thickness) {
      const { nominal, lotSd, ownSd } = sheet.thickness;
      this.thickness = { nominal, variation: on.stock.variation('sheet thickness', lotSd, ownSd) };
    }
  }

  protected override shape(machine: Machine, lot: number): void {
    const { parts, calendar } = this.on;
    for (const it of this.settings.values()) {
      it.deviation = it.setting.deviation(calendar.now) + it.cycleSd * it.z();
    }
    const sheet = this.thickness;
    // A normal spread could in principle make a sheet of no thickness: keep heating time above zero.
    const thicker = sheet ? sheet.variation.ofLot(lot) + sheet.variation.ofPiece() : 0;
    if (sheet) machine.cycle += this.heating * Math.max(0, sheet.nominal + thicker);
    for (const feature of this.features) {
      const formed = feature.spec.madeAt === this.here;
      const common =
        feature.shared(lot) + (formed ? feature.base + feature.response(this.settings, thicker) : 0);
      for (let i = 0; i < machine.loaded; i++) {
        const row = machine.load[i]!;
        parts.set(row, feature.truth, parts.get(row, feature.truth) + common + feature.cavity(i));
      }
    }
    for (const { setting, remembered } of this.settings.values()) {
      for (let i = 0; i < machine.loaded; i++) parts.set(machine.load[i]!, remembered, setting.adjusted);
    }
  }
}
