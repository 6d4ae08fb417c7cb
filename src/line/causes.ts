import type { Line } from './line.ts';
import type { ScrapCause } from './scrap-causes.ts';

/** Parts that a station scrapped for one cause. */
interface ScrapCount {
  readonly station: string;
  readonly cause: ScrapCause;
  readonly parts: number;
}

/** Attempts to assemble that one mating pair decided: those in which it was farthest outside its limits. */
interface MisfitCount {
  readonly station: string;
  /** Places of the pair among those of the station. */
  readonly pair: number;
  readonly tight: number;
  readonly loose: number;
}

/** What was counted up to a moment, or between two. */
export interface Causes {
  readonly scrapped: readonly ScrapCount[];
  readonly misfits: readonly MisfitCount[];
}

export const NO_CAUSES: Causes = { scrapped: [], misfits: [] };

/** Counted from the start of the run up to now. */
export function causesNow({ piles, assemblies }: Line): Causes {
  return {
    scrapped: piles.map(({ station, cause, parts }) => ({ station, cause, parts })),
    misfits: [...assemblies].flatMap(([station, { decided }]) =>
      decided.map(({ tight, loose }, pair) => ({ station, pair, tight, loose })),
    ),
  };
}

/** What came between two moments, without what did not come about. Ways to scrap are only ever added, behind the others. */
export function causesBetween(from: Causes, to: Causes): Causes {
  const scrapped = to.scrapped.map((own, i) => ({
    ...own,
    parts: own.parts - (from.scrapped[i]?.parts ?? 0),
  }));
  const misfits = to.misfits.map((own, i) => {
    const { tight, loose } = from.misfits[i] ?? { tight: 0, loose: 0 };
    return { ...own, tight: own.tight - tight, loose: own.loose - loose };
  });
  return {
    scrapped: scrapped.filter(({ parts }) => parts > 0),
    misfits: misfits.filter(({ tight, loose }) => tight + loose > 0),
  };
}
