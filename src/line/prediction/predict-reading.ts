import type { Scenario } from '../../scenario/scenario.ts';
import type { ReaderSpec } from '../../scenario/stations/reader.ts';
import { markersOf, readShare } from '../read-share.ts';

/** Share of the parts that come for the first time whose mark a reader should not read, whatever becomes of them. */
export function predictUnread(reader: ReaderSpec, scenario: Scenario): number {
  return 1 - readShare(markersOf(scenario), reader).read;
}
