import type { ResponseOf } from '../scenario/responses.ts';
import { Aside } from './aside.ts';
import { Hand } from './hand.ts';
import type { Line } from './line.ts';
import { BuildAhead } from './operations/build-ahead.ts';
import { VisitTime } from './visit-time.ts';

/** How a station builds ahead. */
export type AheadSpec = Omit<ResponseOf<'build-ahead'>, 'do' | 'when'>;

/** Lets an assembling station build ahead; what comes back takes whether it does so from now on. */
export function setAhead(line: Line, how: AheadSpec): (holds: boolean) => void {
  const { assemblies, stations, parts, streams, tally } = line;
  const { at, without, upTo, finish } = how;
  const assembly = assemblies.get(at)!;
  const station = stations.get(at)!;
  const { machines } = station;
  const { mates } = assembly.on;
  const rules = {
    mates,
    without: mates.all.findIndex(({ kinds }) => kinds[0]!.stock.name === without),
    upTo,
    finish: new VisitTime(`${at}/finish`, finish, parts, streams),
  };
  const aside = new Aside(tally, () => station.wake());
  const hands = Array.from({ length: upTo + machines.length }, () => new Hand(mates));
  const ahead = new BuildAhead(rules, assembly, aside, hands, machines.length);
  assembly.buildAhead(ahead);
  station.aside = aside;
  return (holds) => {
    ahead.on = holds;
    if (holds) line.wake(station);
  };
}
