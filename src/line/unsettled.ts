import type { Calendar } from '../kernel/calendar.ts';
import type { PartTable } from './part-table.ts';
import { Upsets } from './upset.ts';

/** What disturbances do to a feature where it is made: they move its mean, and scale the deviation that is the part's own. */
export class UnsettledFeature {
  readonly mean: Upsets;
  readonly spread: Upsets;
  private readonly parts: PartTable;
  private readonly truth: number;
  /** Column of the part's own deviation, mm, kept until the feature is cut; null for one that forming makes. */
  private readonly own: number | null;

  /** @param truth the feature's column */
  constructor(calendar: Calendar, parts: PartTable, truth: number, cut: boolean) {
    this.mean = new Upsets(calendar);
    this.spread = new Upsets(calendar);
    this.parts = parts;
    this.truth = truth;
    this.own = cut ? parts.column(0) : null;
  }

  /** A part is begun, whose feature is cut later. */
  keep(row: number): void {
    this.parts.set(row, this.own!, this.parts.get(row, this.truth));
  }

  /** The feature of the part has been cut. */
  cut(row: number): void {
    const { parts, truth } = this;
    const more = this.mean.sum() + (this.spread.factor() - 1) * parts.get(row, this.own!);
    parts.set(row, truth, parts.get(row, truth) + more);
  }
}

/** Whose readings are taken as they would have been when its lot was begun: a machine by its number; null for the present. */
export interface AsBegun {
  slot: number | null;
}

/** What disturbances do to the readings of a feature: they shift them, and scale the deviates of repeatability. */
export class UnsettledReading {
  readonly bias: Upsets;
  readonly spread: Upsets;
  private readonly as: AsBegun;
  /** By machine, how it stood when the present lot was begun: the shift, mm, and by how much the deviates were larger. */
  private readonly kept: { readonly shift: number; readonly more: number }[] = [];

  constructor(calendar: Calendar, as: AsBegun) {
    this.bias = new Upsets(calendar);
    this.spread = new Upsets(calendar);
    this.as = as;
  }

  /** A lot is begun on a machine. */
  keep(slot: number): void {
    this.kept[slot] = this.now;
  }

  /** What is added to a reading, mm, of which repeatability is so much. */
  added(repeatability: number): number {
    const { shift, more } = this.as.slot === null ? this.now : this.kept[this.as.slot]!;
    return shift + more * repeatability;
  }

  private get now(): { readonly shift: number; readonly more: number } {
    return { shift: this.bias.sum(), more: this.spread.factor() - 1 };
  }
}
