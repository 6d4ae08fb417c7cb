import type { CarrierSpec } from '../carriers.ts';
import { isSource } from '../stations.ts';
import type { Checker } from './checker.ts';

/** Whether carriers are taken where parts start, and enough of them for one load. */
export function checkCarrier(check: Checker, { name, number, from, to }: CarrierSpec): void {
  const path = ['carriers', name];
  if (to !== undefined) check.known([...path, 'to'], to, check.names.stations, 'station');
  if (!check.known([...path, 'from'], from, check.names.stations, 'station')) return;
  const source = check.stations.get(from);
  if (!source) return;
  if (!isSource(source)) {
    check.say(
      [...path, 'from'],
      `no parts start at "${from}"; a carrier is taken where they do, by a station that takes from stock or lets parts arrive`,
    );
  } else if (source.does === 'form' && number < source.perSheet) {
    check.say(
      [...path, 'number'],
      `"${from}" makes ${source.perSheet} parts of one sheet and needs a carrier for each; give at least ${source.perSheet}`,
    );
  }
}

/** Whether carriers come to where they are given back, and suffice for the batches on the way. */
export function checkCirculation(check: Checker): void {
  const { raw, stations, ways } = check;
  for (const { name, number, from, to } of raw.carriers) {
    const path = ['carriers', name];
    if (to !== undefined && !ways.lead(from, to)) {
      check.say(
        [...path, 'to'],
        `parts from "${from}" never come to "${to}", so no carrier would be given back`,
      );
      continue;
    }
    const source = stations.get(from);
    const load = source?.does === 'form' ? source.perSheet : 1;
    for (const station of raw.stations) {
      if (station.does !== 'work' || station.batch === 1 || !ways.lead(from, station.name)) continue;
      // Where parts without a carrier come too, they fill the batch.
      const others = raw.stations.some(
        (other) =>
          (isSource(other) && other.name !== from && ways.lead(other.name, station.name)) ||
          (other.name === to && ways.lead(to, station.name)),
      );
      const carried = number - (number % load);
      if (others || carried >= station.batch) continue;
      check.say(
        [...path, 'number'],
        `${number} ${number === 1 ? 'carrier takes' : 'carriers take'} ${carried} parts at once, but "${station.name}" starts only when ${station.batch} are there; give at least ${Math.ceil(station.batch / load) * load}`,
      );
    }
  }
}
