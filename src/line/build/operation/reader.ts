import { uniformBlocks } from '../../../kernel/distributions/uniform.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Reader } from '../../reader.ts';
import type { Plan } from '../plan.ts';

/** What reads marks in front of the station, if anything does. */
export function readerOf(spec: SpecOf<'gauge' | 'assemble'> & { name: string }, plan: Plan): Reader | null {
  const { parts, streams, tally } = plan.line;
  const { name, reader } = spec;
  if (!reader) return null;
  const { reMark } = reader.unread;
  return new Reader(reader, {
    ...{ parts, tally, marked: plan.marked, grade: plan.grade },
    luck: parts.luck(uniformBlocks(streams.of(`station/${name}/reader`))),
    again: streams.of(`station/${name}/reader/again`),
    reMark: reMark && { place: plan.station(reMark.station).inbox!, sent: parts.column(0) },
  });
}
