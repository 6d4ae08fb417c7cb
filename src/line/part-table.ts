import type { Fill } from '../kernel/distributions/distribution.ts';

/** A column that every part has: the time it was started, s. */
export const BORN = 0;

/** Parts drawn ahead: few at first, for a short run, and more later. */
const FIRST_AHEAD = 4;
const MOST_AHEAD = 128;

/**
 * The parts in the line, one row of numbers each; a row is used again when its part has left. Columns are
 * claimed while the line is built. What is random about a part belongs to its row from the start, so part number k
 * has the same luck under every policy of a seed. The rows of parts to come are drawn ahead, column by column, so
 * that to start a part is to copy a row.
 */
export class PartTable {
  /** All rows; number `column` of part `row` stands at `row * width + column`. Replaced when the table grows. */
  data = new Float64Array(0);
  width = 1;
  private readonly defaults: number[] = [0];
  private readonly lucky: { readonly column: number; readonly fill: Fill }[] = [];
  private readonly mixings: { readonly columns: readonly number[]; readonly weights: Float64Array[] }[] = [];
  /** Rows as the next parts will have them, and how far into them the next part is. */
  private ahead = new Float64Array(0);
  private next = 0;
  /** One column of the rows drawn ahead. */
  private block = new Float64Array(0);
  /** Rows that parts have left, the latest last. */
  private free = new Int32Array(64);
  private freed = 0;
  private rows = 0;

  /** Claims a column that starts with `value` in every new part. */
  column(value: number): number {
    if (this.rows > 0) throw new Error('columns are claimed before the first part');
    this.defaults.push(value);
    return this.width++;
  }

  /** Claims a column that `fill` draws for every part. It draws ahead, so it must serve nobody else. */
  luck(fill: Fill): number {
    const column = this.column(0);
    this.lucky.push({ column, fill });
    return column;
  }

  /**
   * Makes luck columns lean on each other: each becomes the sum of itself and those before it in the list, times the
   * weights of its row. The draws of each column stay its own.
   * @param weights lower triangular, one row a column
   */
  mix(columns: readonly number[], weights: readonly (readonly number[])[]): void {
    this.mixings.push({ columns, weights: weights.map((row) => Float64Array.from(row)) });
  }

  get(row: number, column: number): number {
    return this.data[row * this.width + column]!;
  }

  set(row: number, column: number, value: number): void {
    this.data[row * this.width + column] = value;
  }

  /** A new part, started at `now`; returns its row. */
  start(now: number): number {
    if (this.next === this.ahead.length) this.draw();
    const row = this.freed > 0 ? this.free[--this.freed]! : this.grow();
    const width = this.width;
    const data = this.data;
    const ahead = this.ahead;
    const base = row * width;
    const from = this.next;
    for (let i = 1; i < width; i++) data[base + i] = ahead[from + i]!;
    this.next = from + width;
    data[base + BORN] = now;
    return row;
  }

  /** The part has left; its row may serve another. */
  leave(row: number): void {
    // No time is negative: marks the row as empty for `rowsInLine`.
    this.data[row * this.width + BORN] = -1;
    if (this.freed === this.free.length) {
      const larger = new Int32Array(2 * this.freed);
      larger.set(this.free);
      this.free = larger;
    }
    this.free[this.freed++] = row;
  }

  /** The rows of the parts in the line. */
  *rowsInLine(): Generator<number> {
    for (let row = 0; row < this.rows; row++) if (this.data[row * this.width + BORN]! >= 0) yield row;
  }

  /** Draws the rows of the next parts. */
  private draw(): void {
    const { width } = this;
    const most = MOST_AHEAD * width;
    const fresh = this.ahead.length < most;
    if (fresh) {
      const length = this.ahead.length === 0 ? FIRST_AHEAD * width : Math.min(2 * this.ahead.length, most);
      this.ahead = new Float64Array(length);
      this.block = new Float64Array(length / width);
    }
    const ahead = this.ahead;
    // Only luck differs from row to row, and a part alters its copy: the rest is written once a table.
    if (fresh)
      this.defaults.forEach((value, column) => {
        for (let at = column; at < ahead.length; at += width) ahead[at] = value;
      });
    const block = this.block;
    for (const { column, fill } of this.lucky) {
      fill(block);
      for (let i = 0, at = column; i < block.length; i++, at += width) ahead[at] = block[i]!;
    }
    for (const { columns, weights } of this.mixings)
      for (let base = 0; base < ahead.length; base += width) mixRow(ahead, base, columns, weights);
    this.next = 0;
  }

  private grow(): number {
    const row = this.rows++;
    if (this.rows * this.width > this.data.length) {
      const larger = new Float64Array(Math.max(64, 2 * this.rows) * this.width);
      larger.set(this.data);
      this.data = larger;
    }
    return row;
  }
}

/** Mixes one row in place: the last first, since each needs those before it as they were drawn. */
function mixRow(
  data: Float64Array,
  base: number,
  columns: readonly number[],
  weights: readonly Float64Array[],
): void {
  for (let i = columns.length - 1; i >= 0; i--) {
    let sum = 0;
    for (let j = 0; j <= i; j++) sum += weights[i]![j]! * data[base + columns[j]!]!;
    data[base + columns[i]!] = sum;
  }
}
