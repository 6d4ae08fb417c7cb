import type { PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Tally } from './tally.ts';

/** Chooses where a part goes that failed a judgement. */
export type Rejects = (row: number) => Place;

/** To a rework station while the part has visits left, then to scrap. `visits` is the column that counts them. */
export function toRework(
  bench: Place,
  limit: number,
  scrap: Place,
  parts: PartTable,
  visits: number,
  tally: Tally,
): Rejects {
  return (row) => {
    const before = parts.get(row, visits);
    if (before >= limit) return scrap;
    parts.set(row, visits, before + 1);
    if (before === 0) tally.reworked++;
    return bench;
  };
}
