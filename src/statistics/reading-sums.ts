import { meanRange } from './mean-range.ts';

/** The mean range of two values, for moving ranges. */
const D2 = meanRange(2);

/** What a row of readings says of the process behind them; null where they are too few. */
export interface Moments {
  readonly readings: number;
  readonly mean: number | null;
  /** Standard deviation from one reading to the next: the mean moving range / 1.128. */
  readonly sdWithin: number | null;
  /** Standard deviation of all the readings. */
  readonly sdOverall: number | null;
}

/** Sums over readings as deviations from an origin: of them, of their squares, and of the sizes of so many steps between them. */
export interface Sums {
  readonly readings: number;
  readonly sum: number;
  readonly squares: number;
  readonly steps: number;
  readonly moved: number;
}

export function momentsOf({ readings, sum, squares, steps, moved }: Sums, origin: number): Moments {
  const mean = readings > 0 ? sum / readings : 0;
  return {
    readings,
    mean: readings > 0 ? origin + mean : null,
    sdWithin: steps > 0 ? moved / steps / D2 : null,
    sdOverall: readings > 1 ? Math.sqrt(Math.max(0, squares - sum * mean) / (readings - 1)) : null,
  };
}

/** Running sums over readings, as deviations from a value near them, so that no digits are lost. */
export class ReadingSums {
  private readings = 0;
  private sum = 0;
  private squares = 0;
  /** Steps from one reading to the next, and the sum of their sizes. */
  private steps = 0;
  private moved = 0;
  private last = Number.NaN;

  add(deviation: number): void {
    this.readings++;
    this.sum += deviation;
    this.squares += deviation * deviation;
    if (!Number.isNaN(this.last)) {
      this.steps++;
      this.moved += Math.abs(deviation - this.last);
    }
    this.last = deviation;
  }

  copy(): ReadingSums {
    return Object.assign(new ReadingSums(), this);
  }

  /** What was added since `before` was copied from here; `origin` is what the deviations are from. */
  since(before: ReadingSums, origin: number): Moments {
    const sums: Sums = {
      readings: this.readings - before.readings,
      sum: this.sum - before.sum,
      squares: this.squares - before.squares,
      steps: this.steps - before.steps,
      moved: this.moved - before.moved,
    };
    return momentsOf(sums, origin);
  }

  /** The same of all that was added. */
  moments(origin: number): Moments {
    return this.since(new ReadingSums(), origin);
  }
}
