import type { Line } from './line.ts';
import { WORKING } from './state.ts';

/** A run broke a law that every run must keep: a fault of the program, never a result. */
class SelfCheckError extends Error {
  constructor(quantity: string, left: number, right: number) {
    super(`self-check failed: ${quantity}: ${left} against ${right}`);
    this.name = 'SelfCheckError';
  }
}

function equal(quantity: string, left: number, right: number, within = 0): void {
  if (!(Math.abs(left - right) <= within * Math.max(1, Math.abs(left), Math.abs(right)))) {
    throw new SelfCheckError(quantity, left, right);
  }
}

/** Rounding of sums over a run. */
const ROUNDING = 1e-9;

/**
 * Checks a line whose clock has reached its end: nothing appeared or vanished, Little's law (J. D. C. Little,
 * 1961, Operations Research 9, 383-387) holds as the identity it is over a whole run, no station finished more
 * work than it had time for (so the line's rate is not above its bottleneck's), and every station's states fill
 * the time.
 */
export function selfCheck(line: Line): void {
  const { now } = line.calendar;
  const { tally } = line;
  tally.advance(now);
  let rows = 0;
  let stayed = tally.stayedSeconds;
  for (const born of line.parts.inLine()) {
    rows++;
    stayed += now - born;
  }
  equal('parts started = good + scrapped + in the line', tally.started, tally.good + tally.scrapped + rows);
  equal('Little: integral of parts in the line = sum of their stays', tally.partSeconds, stayed, ROUNDING);
  let held = 0;
  for (const station of line.stations.values()) {
    station.settle();
    held += (station.inbox?.count ?? 0) + station.partsHere;
    const total = station.seconds.reduce((sum, seconds) => sum + seconds, 0);
    const working = station.seconds[WORKING]!;
    // The end of each cycle is rounded to the clock's resolution, perhaps the same way every time.
    const clock = station.finishedCycles * now * Number.EPSILON;
    if (station.finishedSeconds > working * (1 + ROUNDING) + clock) {
      throw new SelfCheckError(
        `cycles finished at "${station.name}" fit into its working time, so no station outruns its own rate`,
        station.finishedSeconds,
        working,
      );
    }
    equal(`states of "${station.name}" fill the run`, total, now, ROUNDING);
  }
  equal('parts in the line = parts on stations and in buffers', rows, held);
  for (const stock of line.stocks.values()) {
    if (!stock.limited) continue;
    equal(
      `stock "${stock.name}": initial + delivered = on hand + taken`,
      stock.initial + stock.delivered,
      stock.onHand + stock.taken,
    );
  }
}
