// Lines like the reference line, of any number of stations.
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { REFERENCE, scratch } from './files.js';

/** A scenario file of `count` stations: the first of the reference line, copies of its second, the last to good. */
export function longLine(count) {
  const scenario = parse(readFileSync(REFERENCE, 'utf8'));
  const { s1: first, s2: next } = scenario.stations;
  const stations = Array.from({ length: count }, (_, i) => [
    `s${i + 1}`,
    { ...(i === 0 ? first : next), to: i === count - 1 ? 'good' : `s${i + 2}` },
  ]);
  const title = `Line of ${count} stations`;
  return scratch(
    `line-${count}.yaml`,
    stringify(
      { ...scenario, title, stations: Object.fromEntries(stations) },
      // Stations share their laws: written out in full rather than as aliases.
      { aliasDuplicateObjects: false },
    ),
  );
}
