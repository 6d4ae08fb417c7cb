import type { Line } from './line.ts';
import type { Machine } from './machine.ts';
import { BORN } from './part-table.ts';
import type { Spare } from './spare.ts';
import { WORKING } from './state.ts';
import type { Stock } from './stock.ts';

/** A run broke a law that every run must keep: a fault of the program, never a result. */
export class SelfCheckError extends Error {
  constructor(quantity: string, left: number, right: number) {
    super(
      `self-check failed: ${quantity}: ${left} against ${right}. This is a fault of mendline: please report it with the scenario`,
    );
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

function checkMachine(machine: Machine, now: number): void {
  machine.settle();
  const total = machine.seconds.reduce((sum, seconds) => sum + seconds, 0);
  const working = machine.seconds[WORKING]!;
  // The end of each cycle is rounded to the clock's resolution, perhaps the same way every time.
  const clock = machine.finishedCycles * now * Number.EPSILON;
  if (machine.worked > working * (1 + ROUNDING) + clock) {
    throw new SelfCheckError(
      `the work done at "${machine.name}" fits into its working time, so no station outruns its own rate`,
      machine.worked,
      working,
    );
  }
  equal(`states of "${machine.name}" fill the run`, total, now, ROUNDING);
}

/** Each piece ordered is somewhere, and each piece that was there or came was used, is there or was lost. */
function checkStock({ name, initial, reserve, onHand, tally, lots, orders }: Stock): void {
  const { taken, delivered, drawn, discovered, expired, ordered, missing, found } = tally;
  equal(`stock "${name}": reserve = left of it + drawn`, reserve.atStart, reserve.left + drawn);
  equal(
    `stock "${name}": initial + delivered + drawn = on hand + taken + found unsound + expired`,
    initial + delivered + drawn,
    onHand + taken + discovered + expired,
  );
  equal(`stock "${name}": on hand = pieces of all lots`, onHand, lots.pieces);
  const onOrder = orders?.onOrder ?? 0;
  equal(
    `stock "${name}": ordered = on order + delivered + never came + found unsound as it came`,
    ordered,
    onOrder + delivered + missing + found,
  );
  const out = [...(orders?.out.values() ?? [])].reduce((sum, { pieces }) => sum + pieces, 0);
  equal(`stock "${name}": on order = pieces of all orders that are out`, onOrder, out);
}

/** A machine always has its piece, whole or worn out, but while it waits for one. */
function checkSpare({ machine, taken, got, worn, given, waits }: Spare): void {
  equal(
    `spare of "${machine.name}": the first + taken + got from others = worn out + given away + in place or put aside`,
    1 + taken + got,
    worn + given + (waits ? 0 : 1),
  );
}

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
  for (const row of line.parts.rowsInLine()) {
    rows++;
    stayed += now - line.parts.get(row, BORN);
  }
  equal(
    'parts started = good + scrapped + turned away + in the line',
    tally.started,
    tally.good + tally.scrapped + tally.turnedAway + rows,
  );
  equal(
    'parts scrapped by cause = parts scrapped',
    line.piles.reduce((sum, { parts }) => sum + parts, 0),
    tally.scrapped,
  );
  equal('Little: integral of parts in the line = sum of their stays', tally.partSeconds, stayed, ROUNDING);
  equal(
    'parts started = parts in a piece x pieces taken + arrivals',
    tally.started,
    line.starts.reduce((sum, parts) => sum + parts(), 0),
  );
  let held = 0;
  for (const station of line.stations.values()) {
    held += station.crowd;
    for (const machine of station.machines) checkMachine(machine, now);
  }
  equal('parts in the line = parts on machines and in buffers', rows, held);
  for (const carriers of line.carriers.values()) {
    let loaded = 0;
    for (const row of line.parts.rowsInLine()) if (carriers.has(row)) loaded++;
    const all = carriers.ready + carriers.returning + loaded;
    equal(`carriers "${carriers.name}": all = ready + returning + with parts`, carriers.number, all);
  }
  for (const crew of line.crews.values()) {
    const most = crew.number * now + crew.calledSeconds();
    const busy = crew.busySeconds();
    if (busy > most * (1 + ROUNDING))
      throw new SelfCheckError(`crew "${crew.name}" is not busier than it can be`, busy, most);
  }
  for (const spare of line.spares) checkSpare(spare);
  const passed = (of: 'given' | 'got') => line.spares.reduce((sum, spare) => sum + spare[of], 0);
  equal('spares: given by machines = got by machines', passed('given'), passed('got'));
  if (line.demand) {
    const { demand } = line;
    const came = demand.atStart + tally.good;
    equal(
      'finished goods: at the start + good = on hand + handed over',
      came,
      demand.stock + demand.handedOver,
    );
  }
  for (const stock of line.stocks.values()) {
    const takers = line.takers.filter(({ stock: name }) => name === stock.name);
    equal(
      `stock "${stock.name}": taken = started on + used + thrown away + in hand`,
      stock.tally.taken,
      takers.reduce((sum, { taken }) => sum + taken(), 0),
    );
    if (stock.limited) checkStock(stock);
  }
}
