import type { Sampler } from '../kernel/distributions/distribution.ts';
import { normalBlocks, standardNormal } from '../kernel/distributions/normal.ts';
import { uniformBlocks } from '../kernel/distributions/uniform.ts';
import type { Streams } from '../kernel/streams.ts';
import type { ReadingSpec } from '../scenario/readings.ts';
import { ReadingSums } from '../statistics/reading-sums.ts';
import type { Feature } from './features.ts';
import type { PartTable } from './part-table.ts';
import { readingBias } from './reading-bias.ts';
import type { UnsettledReading } from './unsettled.ts';

/** A reading that is a multiple of the resolution may miss a limit by the rounding of binary numbers alone. */
const OF_A_STEP = 1e-6;

/**
 * How one feature is read: its true value, plus a bias (that of its warmth included) and the offset of the appraiser,
 * plus the repeatability times a deviate, rounded to the resolution; and what is off limits, by the limits drawn in by the guard.
 */
export class Gauging {
  readonly feature: Feature;
  /** Sums of the readings, as deviations from the aim; null where no limits judge them. */
  readonly sums: ReadingSums | null;
  /** What disturbs it; null where nothing does. */
  upset: UnsettledReading | null = null;
  private readonly parts: PartTable;
  /** By appraiser, bias included, mm. */
  private readonly offsets: readonly number[];
  private readonly repeatability: number;
  private readonly resolution: number;
  private readonly lower: number;
  private readonly upper: number;
  /** Column of the part's deviate for the next reading, and draws for later ones. */
  private readonly luck: number;
  private readonly again: Sampler;

  constructor(
    feature: Feature,
    spec: ReadingSpec,
    appraisers: number,
    station: string,
    parts: PartTable,
    streams: Streams,
  ) {
    const { repeatability, reproducibility, resolution, guard, name } = spec;
    const bias = readingBias(spec, feature.spec);
    this.feature = feature;
    this.sums = feature.spec.limits === null ? null : new ReadingSums();
    this.parts = parts;
    const z =
      reproducibility > 0 ? standardNormal(streams.of(`station/${station}/appraisers/${name}`)) : null;
    this.offsets = Array.from({ length: appraisers }, () => (z ? bias + reproducibility * z() : bias));
    this.repeatability = repeatability;
    this.resolution = resolution;
    const { lower, upper } = feature.spec.limits ?? {
      lower: Number.NEGATIVE_INFINITY,
      upper: Number.POSITIVE_INFINITY,
    };
    const rounding = resolution * OF_A_STEP;
    this.lower = lower + guard - rounding;
    this.upper = upper - guard + rounding;
    this.luck = parts.luck(normalBlocks(streams.of(`station/${station}/reading/${name}`)));
    this.again = standardNormal(streams.of(`station/${station}/reading/${name}/again`));
  }

  /** What the appraiser reads, or would read, of the part, mm; the same until `renew`. */
  read(row: number, appraiser: number): number {
    const { parts } = this;
    const own = this.repeatability * parts.get(row, this.luck);
    let reading = parts.get(row, this.feature.truth) + this.offsets[appraiser]! + own;
    if (this.upset !== null) reading += this.upset.added(own);
    return this.resolution === 0 ? reading : Math.round(reading / this.resolution) * this.resolution;
  }

  isOff(reading: number): boolean {
    return reading < this.lower || reading > this.upper;
  }

  /** The next reading of the part will be another. */
  renew(row: number): void {
    this.parts.set(row, this.luck, this.again());
  }
}

/** The people who read at a station. Who gauges a part is drawn with it, so that it does not depend on the policy. */
export class Appraisers {
  readonly number: number;
  private readonly parts: PartTable;
  private readonly luck: number;
  private readonly again: Sampler;

  constructor(number: number, station: string, parts: PartTable, streams: Streams) {
    this.number = number;
    this.parts = parts;
    this.luck = parts.luck(uniformBlocks(streams.of(`station/${station}/appraiser`)));
    this.again = streams.of(`station/${station}/appraiser/again`);
  }

  /** Who gauges the part; the same until `renew`. */
  of(row: number): number {
    return Math.floor(this.parts.get(row, this.luck) * this.number);
  }

  renew(row: number): void {
    this.parts.set(row, this.luck, this.again());
  }
}
