import type { SpecOf } from '../../../scenario/stations.ts';
import { Reader } from '../../reader.ts';
import type { Plan } from '../plan.ts';

/** What reads marks in front of the station, if anything does. */
export function readerOf(spec: SpecOf<'gauge' | 'assemble'>, { line, marked }: Plan): Reader | null {
  const { parts, streams, tally } = line;
  return spec.reader ? new Reader(spec.reader, spec.name, parts, streams, marked, tally) : null;
}
