import type { Spare } from './spare.ts';

/** Whether the piece of `giver` may be taken out for the repair that waits at `taker`. */
function mayGive(giver: Spare, taker: Spare): boolean {
  if (giver.machine === taker.machine || !giver.breakdown.isWhole) return false;
  // For a machine beside it that stands anyway, not for one that would then stand in its place.
  return giver.breakdown.place !== taker.breakdown.place || giver.stands;
}

/**
 * Lets the repair that has waited longest for a spare have the piece of another machine, and says whether there was
 * one: of those that stand anyway, else of the others, the first. A machine that gave its piece away waits for the stock
 * alone, so that no piece goes to and fro.
 * @param spares all of one stock
 * @param givers those of them that may be taken out, the first choice first
 */
export function borrow(spares: readonly Spare[], givers: readonly Spare[]): boolean {
  const waiting = spares.filter(({ waits, lent }) => waits && !lent).sort((a, b) => a.turn - b.turn);
  for (const taker of waiting) {
    const able = givers.filter((giver) => mayGive(giver, taker));
    const giver = able.find(({ stands }) => stands) ?? able[0];
    if (!giver) continue;
    taker.takeOutOf(giver);
    return true;
  }
  return false;
}
