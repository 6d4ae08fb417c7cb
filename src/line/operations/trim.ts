import type { Burr } from '../burr.ts';
import type { Feature } from '../features.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Tally } from '../tally.ts';
import type { Tool } from '../tool.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** A feature whose edge wanders as the tool wears. */
interface Worn {
  readonly feature: Feature;
  /** How far the edge moves with each cut, mm. */
  readonly shift: number;
  /** Column of the normal term that a part has for each cut the tool has made before, mm; null when it has none. */
  readonly scatter: number | null;
}

/** What a trimming station cuts. */
export interface Cutting {
  readonly features: readonly Feature[];
  readonly worn: readonly Worn[];
  /** By machine; null where nothing depends on the tool. */
  readonly tools: readonly Tool[] | null;
  readonly burr: Burr | null;
  readonly tally: Tally;
}

/** Cuts the features made here. A second visit finds nothing left to cut, and does not wear the tool. */
export class Trim extends Work {
  private readonly parts: PartTable;
  private readonly on: Cutting;
  private readonly cut: number;

  constructor(time: VisitTime, parts: PartTable, on: Cutting) {
    super(time);
    this.parts = parts;
    this.on = on;
    this.cut = parts.column(0);
  }

  override begin(machine: Machine): boolean {
    if (!super.begin(machine)) return false;
    if (this.on.burr !== null) this.deburr(machine, this.on.burr);
    return true;
  }

  finish(machine: Machine): void {
    const row = machine.load[0]!;
    const { parts } = this;
    if (parts.get(row, this.cut) === 1) return;
    parts.set(row, this.cut, 1);
    for (const { truth, base, upset } of this.on.features) {
      parts.set(row, truth, parts.get(row, truth) + base);
      if (upset !== null) upset.cut(row);
    }
    if (this.on.tools !== null) this.wear(row, this.on.tools[machine.slot]!);
    for (const { truth, made } of this.on.features) if (made !== null) made.add(parts.get(row, truth));
  }

  /** Judged by the tool that begins the cut: one that is replaced in the middle of it has left its burr already. */
  private deburr(machine: Machine, burr: Burr): void {
    const row = machine.load[0]!;
    const tool = this.on.tools![machine.slot]!;
    tool.deburrs = this.parts.get(row, this.cut) === 0 && burr.isTooHigh(row, tool.cuts);
    if (tool.deburrs) machine.cycle += burr.deburring;
  }

  /** The edge stands where the cuts before this one have brought it. */
  private wear(row: number, tool: Tool): void {
    const { parts } = this;
    for (const { feature, shift, scatter } of this.on.worn) {
      const aCut = shift + (scatter === null ? 0 : parts.get(row, scatter));
      parts.set(row, feature.truth, parts.get(row, feature.truth) + aCut * tool.cuts);
    }
    tool.cuts++;
    if (tool.deburrs) this.on.tally.deburred++;
  }
}
