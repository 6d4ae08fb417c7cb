import type { Line } from '../line.ts';
import type { ScrapPile } from '../scrap-pile.ts';
import type { Station } from '../station.ts';
import type { Log } from './log.ts';
import { Steps } from './steps.ts';
import { tap } from './tap.ts';

/**
 * Writes down where parts go.
 * @returns how many parts there were in front of each station that has a buffer
 */
export function followMoves(line: Line, log: Log): ReadonlyMap<string, Steps<number>> {
  tap(line.parts, 'start', (inner) => (now) => {
    const row = inner(now);
    log.start(row);
    return row;
  });
  for (const [name, bypass] of line.bypasses) {
    tap(bypass, 'accept', (inner) => (row) => {
      if (!bypass.isOpen) return inner(row);
      log.tell(row, { station: name, kind: 'passes' });
      if (inner(row)) return true;
      log.takeBack();
      return false;
    });
    if (bypass.owed !== null)
      tap(bypass.owed, 'collect', (inner) => (row) => {
        log.tell(row, { station: name, kind: 'kept' });
        inner(row);
      });
  }
  followExits(line, log);
  const fronts = [...line.stations.values()].filter(({ inbox }) => inbox !== null);
  return new Map(fronts.map((station) => [station.name, followBuffer(station, log)]));
}

function followBuffer({ name, inbox }: Station, log: Log): Steps<number> {
  const level = new Steps(inbox!.held);
  tap(inbox!, 'accept', (inner) => (row) => {
    const part = log.of(row);
    const { station } = part;
    // Told first, for the station may take it at once.
    log.tell(row, { station: name, kind: 'waits' });
    level.set(log.now, level.now + 1);
    Object.assign(part, { station: name, waitsIn: level });
    if (inner(row)) return true;
    level.set(log.now, level.now - 1);
    Object.assign(part, { station, waitsIn: null });
    log.takeBack();
    return false;
  });
  return level;
}

function followExits(line: Line, log: Log): void {
  const leaves = (row: number, as: 'good' | 'scrapped' | 'turned-away') => {
    const { number } = log.of(row);
    log.parts[number - 1]!.left = { at: log.now, as };
  };
  line.good.leaving.push((row) => {
    log.tell(row, { station: log.of(row).station, kind: 'good' });
    leaves(row, 'good');
  });
  line.turnedAway.leaving.push((row) => {
    log.tell(row, { station: log.of(row).station, kind: 'turned-away' });
    leaves(row, 'turned-away');
  });
  line.scrap.leaving.push((row) => {
    const { station, cause } = log.of(row).pile!;
    log.tell(row, { station, kind: 'scrapped', why: cause });
    leaves(row, 'scrapped');
  });
  for (const pile of line.piles) followPile(pile, log);
  // A policy may open more ways to scrap while the line runs.
  tap(line, 'scrapFor', (inner) => (station, cause) => {
    const known = line.piles.length;
    const pile = inner(station, cause);
    if (line.piles.length > known) followPile(pile, log);
    return pile;
  });
}

/** The way that a part takes says why it is scrapped, as it does where scrap is counted. */
function followPile(pile: ScrapPile, log: Log): void {
  tap(pile, 'accept', (inner) => (row) => {
    log.of(row).pile = pile;
    return inner(row);
  });
}
