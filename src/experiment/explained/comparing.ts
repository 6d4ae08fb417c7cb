import { meanInterval } from '../../statistics/mean-interval.ts';
import { type RunShare, shareInterval } from '../../statistics/share-interval.ts';
import { type RunSpread, spreadInterval } from '../../statistics/spread-interval.ts';
import { type Compared, Judge } from '../judge.ts';
import type { Observed } from '../observe.ts';

/** Coverage of the intervals that are shown, and of all those together that decide whether a value differs. */
const SHOWN = 0.95;
const DECIDING = 0.99;

/** Compares predictions, null where there is no closed form, with what was seen in the runs. */
export class Comparing {
  readonly judge = new Judge(SHOWN, DECIDING);
  private readonly runs: readonly Observed[];

  constructor(runs: readonly Observed[]) {
    this.runs = runs;
  }

  share(predicted: number | null, seen: (run: Observed) => RunShare): Compared {
    const shares = this.runs.map(seen).filter(({ of }) => of > 0);
    return this.judge.compare(predicted, (level, comparisons) =>
      shares.length === 0 ? null : shareInterval(shares, level, comparisons),
    );
  }

  mean(predicted: number | null, seen: (run: Observed) => RunSpread | null): Compared {
    const means = this.spreads(seen).map(({ mean }) => mean);
    return this.judge.compare(predicted, (level, comparisons) =>
      means.length === 0 ? null : meanInterval(means, level, comparisons),
    );
  }

  sd(predicted: number | null, seen: (run: Observed) => RunSpread | null): Compared {
    const spreads = this.spreads(seen);
    return this.judge.compare(predicted, (level, comparisons) =>
      spreads.length === 0 ? null : spreadInterval(spreads, level, comparisons),
    );
  }

  private spreads(seen: (run: Observed) => RunSpread | null): RunSpread[] {
    return this.runs.map(seen).filter((spread) => spread !== null);
  }
}
