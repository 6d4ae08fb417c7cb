import { Histogram } from './histogram.ts';
import type { Line } from './line.ts';
import { FitHistograms } from './probes/fit-histograms.ts';

/** About so many times the levels are looked at. */
const LEVEL_POINTS = 120;

/** What was looked at in one run, for pictures: what no policy sees is among it. Plain data. */
export interface Look {
  /** By feature that has limits, its true sizes as made, counted in the bins of `Histogram`. */
  readonly features: Readonly<Record<string, readonly number[]>>;
  /** By station and mating pair, the true clearances of first attempts; null of a pair without room. */
  readonly fits: Readonly<Record<string, readonly (readonly number[] | null)[]>>;
  /** Time between two looks at the levels, s, the first of them at the end of the warm-up. */
  readonly every: number;
  /** Pieces on hand of each limited stock, and parts in each limited buffer by its station. */
  readonly stocks: Readonly<Record<string, readonly number[]>>;
  readonly buffers: Readonly<Record<string, readonly number[]>>;
}

interface Watched {
  readonly name: string;
  readonly level: () => number;
  readonly seen: number[];
}

const watched = (name: string, level: () => number): Watched => ({ name, level, seen: [level()] });
const named = (all: readonly Watched[]) => Object.fromEntries(all.map(({ name, seen }) => [name, seen]));

/** Looks at a line from now on. It changes nothing of what happens and of what is counted otherwise. */
export class Looks {
  private readonly features = new Map<string, Histogram>();
  private readonly fits = new Map<string, FitHistograms>();
  private readonly stocks: readonly Watched[];
  private readonly buffers: readonly Watched[];
  private readonly bin: number;
  private readonly step: number;

  /** @param bin width of the bins at whose ends the clock stops, s, and `bins` how many there are */
  constructor(line: Line, bin: number, bins: number) {
    this.bin = bin;
    this.step = Math.max(1, Math.ceil(bins / LEVEL_POINTS));
    for (const [name, feature] of line.features) {
      const { limits } = feature.spec;
      if (limits === null || limits.upper <= limits.lower) continue;
      const seen = new Histogram(limits);
      feature.made = seen;
      this.features.set(name, seen);
    }
    for (const [name, assembly] of line.assemblies) {
      const seen = new FitHistograms(assembly.on.pairs);
      assembly.probe = seen;
      this.fits.set(name, seen);
    }
    this.stocks = [...line.stocks].flatMap(([name, stock]) =>
      stock.limited ? [watched(name, () => stock.seen)] : [],
    );
    this.buffers = [...line.stations].flatMap(([name, { inbox }]) =>
      inbox !== null && inbox.capacity > 0 && Number.isFinite(inbox.capacity)
        ? [watched(name, () => inbox.held)]
        : [],
    );
  }

  /** The clock stands at the end of this bin, the first being 0. */
  atEnd(bin: number): void {
    if ((bin + 1) % this.step !== 0) return;
    for (const { seen, level } of [...this.stocks, ...this.buffers]) seen.push(level());
  }

  get look(): Look {
    return {
      features: Object.fromEntries([...this.features].map(([name, { counts }]) => [name, counts])),
      fits: Object.fromEntries(
        [...this.fits].map(([name, { pairs }]) => [name, pairs.map((pair) => pair?.counts ?? null)]),
      ),
      every: this.bin * this.step,
      stocks: named(this.stocks),
      buffers: named(this.buffers),
    };
  }
}
