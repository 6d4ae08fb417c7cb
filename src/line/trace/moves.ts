import type { Line } from '../line.ts';
import type { ScrapCause } from '../scrap-causes.ts';
import type { Station } from '../station.ts';
import type { Log } from './log.ts';
import { Steps } from './steps.ts';
import { tap } from './tap.ts';

/** Why a part is scrapped at a station where nothing was found wrong with the part itself. */
const OTHERWISE: Readonly<Record<string, ScrapCause>> = {
  gauge: 'lot-rejected',
  rework: 'out-of-reach',
  assemble: 'no-mates',
};

/**
 * Writes down where parts go.
 * @param does what each station does
 * @returns how many parts there were in front of each station that has a buffer
 */
export function followMoves(
  line: Line,
  does: ReadonlyMap<string, string>,
  log: Log,
): ReadonlyMap<string, Steps<number>> {
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
  followExits(line, does, log);
  const fronts = [...line.stations.values()].filter(({ inbox }) => inbox !== null);
  return new Map(fronts.map((station) => [station.name, followBuffer(station, log)]));
}

function followBuffer({ name, inbox }: Station, log: Log): Steps<number> {
  const level = new Steps(inbox!.held);
  tap(inbox!, 'accept', (inner) => (row) => {
    const part = log.of(row);
    const before = { station: part.station, fault: part.fault };
    // Told first, for the station may take it at once.
    log.tell(row, { station: name, kind: 'waits' });
    level.set(log.now, level.now + 1);
    Object.assign(part, { station: name, fault: null, waitsIn: level });
    if (inner(row)) return true;
    level.set(log.now, level.now - 1);
    Object.assign(part, { ...before, waitsIn: null });
    log.takeBack();
    return false;
  });
  return level;
}

function followExits(line: Line, does: ReadonlyMap<string, string>, log: Log): void {
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
    const { station, inCycle, fault } = log.of(row);
    const why = inCycle ? 'broken-off' : (fault ?? OTHERWISE[does.get(station)!] ?? 'broken-off');
    log.tell(row, { station, kind: 'scrapped', why });
    leaves(row, 'scrapped');
  });
}
