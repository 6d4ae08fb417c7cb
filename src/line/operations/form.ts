import type { Sampler } from '../../kernel/distributions/distribution.ts';
import { type SheetTime, timeFor } from '../../standards/sheet-heating.ts';
import type { ColdStart } from '../cold-start.ts';
import type { Feature } from '../features.ts';
import type { Follows } from '../follows.ts';
import type { FormingFlaws } from '../forming-flaws.ts';
import type { FromSheet } from '../from-sheet.ts';
import type { Machine } from '../machine.ts';
import type { Setting } from '../setting.ts';
import type { Variation } from '../variation.ts';
import { Source, type SourceParts } from './source.ts';

/** Place of the sheet's thickness among the deviations of a cycle; the settings follow in their order. */
export const THICKNESS = 0;

interface Controlled {
  readonly setting: Setting;
  /** Column that remembers what was added to the target when the part was formed. */
  readonly remembered: number;
  readonly cycleSd: number;
  readonly z: Sampler;
  readonly cold: ColdStart | null;
}

/** A feature of the parts with what it follows; null when it is made later and has only its own variation yet. */
interface Following {
  readonly feature: Feature;
  readonly follows: Follows | null;
}

/** A kind of sheet. */
export interface Sheet {
  /** Its thickness, mm, and how much thicker it is than the standard kind; null where it is not known. */
  readonly thickness: {
    readonly nominal: number;
    readonly more: number;
    readonly variation: Variation;
  } | null;
  /** How far each setting is moved while such a sheet is formed, in their order; null where none is. */
  readonly moves: readonly number[] | null;
  /** What each feature has of it, in their order. */
  readonly features: readonly FromSheet[];
}

export interface FormParts {
  readonly perSheet: number;
  /** The kinds of sheet by the places of their supplies, the standard one first. */
  readonly sheets: readonly Sheet[];
  /** Times by thickness that the cycle takes besides its own. */
  readonly times: readonly SheetTime[];
  readonly settings: readonly Controlled[];
  readonly features: readonly Following[];
  /** Null where no forming window and no least wall are given. */
  readonly flaws: FormingFlaws | null;
}

/**
 * Forms a sheet into several parts. They share the sheet's thickness, its lot's terms and the settings of the
 * cycle, which count as they are when the sheet is loaded, and differ by cavity and by their own variation.
 */
export class Form extends Source {
  /** Only where parts may turn out flawed. */
  finish?: (machine: Machine) => void;
  private readonly made: FormParts;
  /** Of the present cycle, from the design: the thickness, mm, and each setting in its unit. */
  private readonly deviations: Float64Array;
  private sheet: Sheet;

  constructor(on: SourceParts, made: FormParts) {
    super(on, made.perSheet);
    this.made = made;
    this.sheet = made.sheets[0]!;
    this.deviations = new Float64Array(made.settings.length + 1);
    const { flaws } = made;
    if (flaws) this.finish = (machine) => flaws.finish(machine);
  }

  override use(place: number): void {
    super.use(place);
    this.sheet = this.made.sheets[place]!;
  }

  protected override shape(machine: Machine, lot: number): void {
    const { deviations, sheet } = this;
    const { settings, features, flaws } = this.made;
    const { parts, calendar } = this.on;
    const { now } = calendar;
    for (let k = 0; k < settings.length; k++) {
      const { setting, cycleSd, z, cold } = settings[k]!;
      const off = setting.deviation(now) + cycleSd * z();
      deviations[k + 1] = cold === null ? off : off + cold.at(machine, now);
    }
    if (sheet.moves !== null) for (let k = 0; k < settings.length; k++) deviations[k + 1]! += sheet.moves[k]!;
    const thickness = this.takeSheet(machine, lot);
    if (flaws !== null) flaws.begin(machine, deviations, thickness);
    for (let k = 0; k < features.length; k++) {
      const { feature, follows } = features[k]!;
      const designed = follows === null ? 0 : feature.base + follows.response(deviations);
      const { upset } = feature;
      let common = feature.shared(sheet.features[k]!, lot) + designed;
      let scale = 1;
      if (upset !== null && follows !== null) {
        common += upset.mean.sum();
        scale = upset.spread.factor();
      } else if (upset !== null) for (let i = 0; i < machine.loaded; i++) upset.keep(machine.load[i]!);
      for (let i = 0; i < machine.loaded; i++) {
        const row = machine.load[i]!;
        const value = parts.get(row, feature.truth) * scale + common + feature.cavity(i);
        parts.set(row, feature.truth, value);
        if (follows !== null && feature.made !== null) feature.made.add(value);
      }
    }
    for (const { setting, remembered } of settings) {
      const added = setting.inForce(now);
      for (let i = 0; i < machine.loaded; i++) parts.set(machine.load[i]!, remembered, added);
    }
  }

  /** The thickness of the sheet, mm, which lengthens the cycle. */
  private takeSheet(machine: Machine, lot: number): number {
    const { thickness } = this.sheet;
    if (thickness === null) return 0;
    const { nominal, more, variation } = thickness;
    const thicker = variation.ofLot(lot) + variation.ofPiece();
    this.deviations[THICKNESS] = thicker + more;
    // A normal spread could in principle make a sheet of no thickness: keep its times above zero.
    const thick = Math.max(0, nominal + thicker);
    for (const time of this.made.times) machine.cycle += timeFor(time, thick);
    return thick;
  }
}
