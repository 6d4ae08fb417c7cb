import { standardNormal } from '../kernel/distributions/normal.ts';
import type { MatchSpec } from '../scenario/matching.ts';
import type { Line } from './line.ts';
import { Matching } from './matching.ts';
import { Patience } from './patience.ts';
import { highestRank, rankOf } from './ranks.ts';

/**
 * What lets an assembling station choose among waiting parts, with a bank for them if there is to be one, and what
 * undoes that. A bank that is taken away is emptied first: nothing comes in until so many have been taken.
 */
export function setMatching(line: Line, how: MatchSpec) {
  const { assemblies, stations, streams, calendar } = line;
  const { at, bank = 0, among = bank, takes, patience } = how;
  const assembly = assemblies.get(at)!;
  const station = stations.get(at)!;
  const { reader, parts, pairs, marked } = assembly.on;
  const known = (row: number) => (reader ? reader.canRead(row) : parts.get(row, marked) === 1);
  const waits = patience > 0 ? new Patience(at, patience, station.machines, calendar) : null;
  const matching = new Matching({
    among,
    takes,
    rank: rankOf(how, { parts, pairs, known }),
    highest: highestRank(how),
    repeatability: how.mateRepeatability,
    z: standardNormal(streams.of(`policy/match/${at}`)),
    patience: waits,
  });
  function choose(by: Matching | null, places: number): void {
    station.inbox!.setBank(places);
    assembly.matching = by;
    waits?.forget();
    if (by !== null) for (const hand of assembly.hands) if (hand.full) by.read(hand);
    if (!line.started) return;
    station.inbox!.freed();
    station.wake();
  }
  return { on: () => choose(matching, bank), off: () => choose(null, 0) };
}
