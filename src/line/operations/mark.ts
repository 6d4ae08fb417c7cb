import type { Stream } from '../../kernel/streams.ts';
import type { ByGrade } from '../../scenario/grades.ts';
import type { Machine } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { VisitTime } from '../visit-time.ts';
import { Work } from './work.ts';

/** Where the luck of a part's mark and whether it took stand, and draws for later visits. */
export interface MarkColumns {
  readonly luck: number;
  readonly again: Stream;
  /** Column: 0 before the part is marked, 1 when its mark took, 2 when it did not. */
  readonly marked: number;
  /** Columns of what is known of a part by its mark, such as readings. */
  readonly history: readonly number[];
}

const TOOK = 1;
const FAILED = 2;

/** How marks come by their grades, as places in `GRADES`. */
export interface Grading {
  /** Column of the grade. */
  readonly grade: number;
  /** Column of the part's luck at its first mark, and draws for later ones. */
  readonly luck: number;
  readonly again: Stream;
  /** The shares of the grades, in which the luck finds its place. */
  readonly shares: ByGrade;
}

/** What a disturbance does to marks while it lasts; what it leaves alone is null. */
export interface Impairment {
  /** How much of it is there, from 0 to 1. */
  readonly level: () => number;
  readonly chance: number | null;
  readonly grades: ByGrade | null;
}

/** So far on the way from one number to another. */
const between = (from: number, to: number, level: number): number =>
  level === 1 ? to : from + level * (to - from);

/**
 * The grade at which the running sum of the shares passes a number from 0 to 1. The shares lie so far on the way
 * from the usual ones to those of an impairment.
 */
function gradeAt(luck: number, shares: ByGrade, usual = shares, level = 1): number {
  let left = luck;
  let last = 0;
  for (let i = 0; i < shares.length; i++) {
    const share = between(usual[i]!, shares[i]!, level);
    if (share === 0) continue;
    last = i;
    left -= share;
    if (left < 0) return i;
  }
  // The sum of the shares may lie a hair below one.
  return last;
}

/**
 * Marks a part; the mark takes when the part's luck at this station lies below the chance. What was known of the part
 * by an earlier mark is lost with it.
 */
export class Mark extends Work {
  /** Chance that a mark takes, as designed. */
  readonly usual: number;
  /** What disturbances impose; the lowest chance holds, and the worst grade. */
  readonly impaired = new Set<Impairment>();
  private readonly parts: PartTable;
  private readonly columns: MarkColumns;
  /** Null where all marks are alike. */
  private readonly grading: Grading | null;

  constructor(
    time: VisitTime,
    parts: PartTable,
    columns: MarkColumns,
    usual: number,
    grading: Grading | null,
  ) {
    super(time);
    this.parts = parts;
    this.columns = columns;
    this.usual = usual;
    this.grading = grading;
  }

  finish(machine: Machine): void {
    const row = machine.load[0]!;
    let chance = this.usual;
    for (const it of this.impaired)
      if (it.chance !== null) chance = Math.min(chance, between(this.usual, it.chance, it.level()));
    const { luck, again, marked, history } = this.columns;
    if (this.parts.get(row, marked) !== 0) {
      for (const column of history) this.parts.set(row, column, Number.NaN);
    }
    this.parts.set(row, marked, this.parts.get(row, luck) < chance ? TOOK : FAILED);
    this.parts.set(row, luck, again());
    if (this.grading !== null) this.grade(row, this.grading);
  }

  /** Whether the mark of a part took, and its grade as a place in `GRADES`, null where all are alike. */
  of(row: number): { readonly took: boolean; readonly grade: number | null } {
    const { parts, columns, grading } = this;
    const took = parts.get(row, columns.marked) === TOOK;
    return { took, grade: grading === null || !took ? null : parts.get(row, grading.grade) };
  }

  private grade(row: number, { grade, luck, again, shares }: Grading): void {
    const { parts } = this;
    const drawn = parts.get(row, luck);
    parts.set(row, luck, again());
    let worst = -1;
    for (const { grades, level } of this.impaired)
      if (grades !== null) worst = Math.max(worst, gradeAt(drawn, grades, shares, level()));
    parts.set(row, grade, worst >= 0 ? worst : gradeAt(drawn, shares));
  }
}
