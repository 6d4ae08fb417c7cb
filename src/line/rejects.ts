import type { PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Tally } from './tally.ts';

/** Chooses where a part goes that failed a judgement. */
export type Rejects = (row: number) => Place;

/** To a rework station while the part has visits left, then to scrap. The columns count them, and
 * remember whether the part was ever reworked anywhere. */
export function toRework(
  bench: Place,
  limit: number,
  scrap: Place,
  parts: PartTable,
  columns: { readonly visits: number; readonly reworked: number },
  tally: Tally,
): Rejects {
  return (row) => {
    const before = parts.get(row, columns.visits);
    if (before >= limit) return scrap;
    parts.set(row, columns.visits, before + 1);
    if (parts.get(row, columns.reworked) === 0) tally.reworked++;
    parts.set(row, columns.reworked, 1);
    return bench;
  };
}
