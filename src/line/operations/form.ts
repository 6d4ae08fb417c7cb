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

/** A feature of the parts with what it follows; `of` null is the thickness of the sheet. */
interface Following {
  readonly feature: Feature;
  /** Whether it is formed here, or made later and has only its own variation yet. */
  readonly formed: boolean;
  readonly gains: readonly { readonly of: Controlled | null; readonly gain: number }[];
}

/**
 * Forms a sheet into several parts. They share the sheet's thickness, its lot's terms and the settings of the
 * cycle, which count as they are when the sheet is loaded, and differ by cavity and by their own variation.
 */
export class Form extends Source {
  private readonly features: readonly Following[];
  private readonly settings: readonly Controlled[];
  private readonly heating: number;
  private readonly thickness: { nominal: number; variation: Variation } | null = null;

  constructor(
    on: SourceParts,
    spec: SpecOf<'form'> & { readonly name: string },
    sheet: StockSpec,
    settings: ReadonlyMap<string, { setting: Setting; remembered: number }>,
    features: readonly Feature[],
    streams: Streams,
  ) {
    super(on, spec.perSheet);
    this.heating = spec.heating?.value ?? 0;
    const controlled = new Map(
      (spec.settings ?? []).map(({ name, cycleSd }): [string, Controlled] => {
        const z = standardNormal(streams.of(`setting/${name}/cycle`));
        return [name, { ...settings.get(name)!, cycleSd: cycleSd?.value ?? 0, z, deviation: 0 }];
      }),
    );
    this.settings = [...controlled.values()];
    this.features = features.map((feature) => {
      const gains = Object.entries(feature.spec.gains ?? {}).map(([name, { value }]) => ({
        of: name === 'thickness' ? null : controlled.get(name)!,
        gain: value,
      }));
      return { feature, formed: feature.spec.madeAt === spec.name, gains };
    });
    if (sheet.thickness) {
      const { nominal, lotSd, ownSd } = sheet.thickness;
      this.thickness = { nominal, variation: on.stock.variation('sheet thickness', lotSd, ownSd) };
    }
  }

  protected override shape(machine: Machine, lot: number): void {
    const { parts, calendar } = this.on;
    for (const it of this.settings) {
      it.deviation = it.setting.deviation(calendar.now) + it.cycleSd * it.z();
    }
    const sheet = this.thickness;
    // A normal spread could in principle make a sheet of no thickness: keep heating time above zero.
    const thicker = sheet ? sheet.variation.ofLot(lot) + sheet.variation.ofPiece() : 0;
    if (sheet) machine.cycle += this.heating * Math.max(0, sheet.nominal + thicker);
    for (const { feature, formed, gains } of this.features) {
      // The gain times the deviation of each setting, mm.
      let response = 0;
      for (const { of, gain } of gains) response += gain * (of ? of.deviation : thicker);
      const common = feature.shared(lot) + (formed ? feature.base + response : 0);
      for (let i = 0; i < machine.loaded; i++) {
        const row = machine.load[i]!;
        parts.set(row, feature.truth, parts.get(row, feature.truth) + common + feature.cavity(i));
      }
    }
    for (const { setting, remembered } of this.settings) {
      for (let i = 0; i < machine.loaded; i++) parts.set(machine.load[i]!, remembered, setting.adjusted);
    }
  }
}
