import type { Sampler } from '../kernel/distributions/distribution.ts';

/** A column that every part has: the time it was started, s. */
export const BORN = 0;

/**
 * The parts in the line, one row of numbers each; a row is used again when its part has left. Columns are
 * claimed while the line is built. What is random about a part is drawn into its row when it is started, so
 * part number k has the same luck under every policy of a seed.
 */
export class PartTable {
  /** All rows; number `column` of part `row` stands at `row * width + column`. Replaced when the table grows. */
  data = new Float64Array(0);
  width = 1;
  #defaults: number[] = [0];
  #luck: { column: number; sampler: Sampler }[] = [];
  #free: number[] = [];
  #rows = 0;

  /** Claims a column that starts with `value` in every new part. */
  column(value: number): number {
    if (this.#rows > 0) throw new Error('columns are claimed before the first part');
    this.#defaults.push(value);
    return this.width++;
  }

  /** Claims a column that `sampler` fills when the part is started. */
  luck(sampler: Sampler): number {
    const column = this.column(0);
    this.#luck.push({ column, sampler });
    return column;
  }

  get(row: number, column: number): number {
    return this.data[row * this.width + column]!;
  }

  set(row: number, column: number, value: number): void {
    this.data[row * this.width + column] = value;
  }

  /** A new part, started at `now`; returns its row. */
  start(now: number): number {
    const row = this.#free.pop() ?? this.#grow();
    const base = row * this.width;
    const data = this.data;
    for (let i = 1; i < this.width; i++) data[base + i] = this.#defaults[i]!;
    data[base + BORN] = now;
    for (const { column, sampler } of this.#luck) data[base + column] = sampler();
    return row;
  }

  /** The part has left; its row may serve another. */
  leave(row: number): void {
    // No time is negative: marks the row as empty for `inLine`.
    this.data[row * this.width + BORN] = -1;
    this.#free.push(row);
  }

  /** The rows of the parts in the line. */
  *rowsInLine(): Generator<number> {
    for (let row = 0; row < this.#rows; row++) if (this.data[row * this.width + BORN]! >= 0) yield row;
  }

  #grow(): number {
    const row = this.#rows++;
    if (this.#rows * this.width > this.data.length) {
      const larger = new Float64Array(Math.max(64, 2 * this.#rows) * this.width);
      larger.set(this.data);
      this.data = larger;
    }
    return row;
  }
}
