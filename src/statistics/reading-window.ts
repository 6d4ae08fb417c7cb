import { type Moments, momentsOf } from './reading-sums.ts';

/** The last so many readings, 2 or more, as deviations from a value near them. */
export class ReadingWindow {
  private readonly ring: Float64Array;
  /** Where the next reading goes, which is where the oldest one stands once the window is full. */
  private at = 0;
  private readings = 0;
  private sum = 0;
  private squares = 0;
  private moved = 0;

  constructor(size: number) {
    this.ring = new Float64Array(size);
  }

  get full(): boolean {
    return this.readings === this.ring.length;
  }

  add(deviation: number): void {
    const { ring, at } = this;
    const size = ring.length;
    if (this.full) {
      const oldest = ring[at]!;
      this.sum -= oldest;
      this.squares -= oldest * oldest;
      this.moved -= Math.abs(ring[at + 1 < size ? at + 1 : 0]! - oldest);
    } else this.readings++;
    const last = ring[at > 0 ? at - 1 : size - 1]!;
    ring[at] = deviation;
    this.at = at + 1 < size ? at + 1 : 0;
    if (this.at === 0) return this.renew();
    this.sum += deviation;
    this.squares += deviation * deviation;
    if (this.readings > 1) this.moved += Math.abs(deviation - last);
  }

  empty(): void {
    this.at = 0;
    this.readings = 0;
    this.sum = 0;
    this.squares = 0;
    this.moved = 0;
  }

  moments(origin: number): Moments {
    const { readings, sum, squares, moved } = this;
    return momentsOf({ readings, sum, squares, steps: Math.max(0, readings - 1), moved }, origin);
  }

  /** Once a round, when the readings stand in their order, the sums are taken anew, so that rounding does not pile up. */
  private renew(): void {
    this.sum = 0;
    this.squares = 0;
    this.moved = 0;
    for (const [i, deviation] of this.ring.entries()) {
      this.sum += deviation;
      this.squares += deviation * deviation;
      if (i > 0) this.moved += Math.abs(deviation - this.ring[i - 1]!);
    }
  }
}
