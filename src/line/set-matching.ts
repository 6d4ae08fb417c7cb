import { standardNormal } from '../kernel/distributions/normal.ts';
import type { MatchSpec } from '../scenario/matching.ts';
import type { Line } from './line.ts';
import { Matching } from './matching.ts';
import { Patience } from './patience.ts';
import { highestRank, rankOf } from './ranks.ts';

/** Lets an assembling station choose among waiting parts from now on, with a bank for them if there is to be one. */
export function setMatching({ assemblies, stations, streams, calendar }: Line, how: MatchSpec): void {
  const { at, bank = 0, among = bank, takes, patience } = how;
  const assembly = assemblies.get(at)!;
  const station = stations.get(at)!;
  const { reader, parts, pairs, marked } = assembly.on;
  const known = (row: number) => (reader ? reader.canRead(row) : parts.get(row, marked) === 1);
  station.inbox!.setBank(bank);
  assembly.matching = new Matching({
    among,
    takes,
    rank: rankOf(how, { parts, pairs, known }),
    highest: highestRank(how),
    repeatability: how.mateRepeatability,
    z: standardNormal(streams.of(`policy/match/${at}`)),
    patience: patience > 0 ? new Patience(at, patience, station.machines, calendar) : null,
  });
}
