import type { Spare } from './spare.ts';

/** Whether the piece of `giver` may be taken out for the repair that waits at `taker`. */
function mayGive(giver: Spare, taker: Spare): boolean {
  if (giver.machine === taker.machine || !giver.breakdown.isWhole) return false;
  if (giver.stands) return !taker.lent || !taker.machine.standsBesides(1);
  // Not where one machine would only stand in place of its neighbour, or a piece go to and fro.
  return giver.breakdown.place !== taker.breakdown.place && !taker.lent;
}

/**
 * Lets the repair that has waited longest for a spare have the piece of another machine, and says whether there was
 * one: of those that stand anyway, else of the others, the first. A machine that gave its piece away has one only from
 * a machine that stands anyway, and where it goes on with it.
 * @param spares all of one stock
 * @param givers those of them that may be taken out, the first choice first
 */
export function borrow(spares: readonly Spare[], givers: readonly Spare[]): boolean {
  const waiting = spares.filter(({ waits }) => waits).sort((a, b) => a.turn - b.turn);
  for (const taker of waiting) {
    const able = givers.filter((giver) => mayGive(giver, taker));
    const giver = able.find(({ stands }) => stands) ?? able[0];
    if (!giver) continue;
    taker.takeOutOf(giver);
    return true;
  }
  return false;
}
