import type { CarrierSpec } from '../carriers.ts';
import { gathers, isSource, loadOf } from '../stations.ts';
import { comesBack } from './check-flow.ts';
import type { Checker } from './checker.ts';
import { Ways } from './ways.ts';

/** Whether a station takes the carriers that loads its parts itself, and enough of them for one load. */
export function checkCarrier(check: Checker, { name, number, from, to }: CarrierSpec): void {
  const path = ['carriers', name];
  if (to !== undefined) check.known([...path, 'to'], to, check.names.stations, 'station');
  if (!check.known([...path, 'from'], from, check.names.stations, 'station')) return;
  const source = check.stations.get(from);
  if (!source) return;
  if (source.does === 'arrive') {
    check.say(
      [...path, 'from'],
      `parts come to "${from}" by themselves; let a station behind it take the carriers`,
    );
    return;
  }
  const load = loadOf(source);
  if (number >= load) return;
  const why = source.does === 'form' ? `makes ${load} parts of one sheet` : `loads ${load} parts together`;
  check.say([...path, 'number'], `"${from}" ${why} and needs a carrier for each; give at least ${load}`);
}

/** Whether carriers come to where they are given back, and suffice for the batches on the way. */
export function checkCirculation(check: Checker): void {
  const { raw, stations, ways } = check;
  for (const { name, number, from, to } of raw.carriers) {
    const path = ['carriers', name];
    if (to !== undefined && to !== from && !ways.lead(from, to)) {
      check.say(
        [...path, 'to'],
        `parts from "${from}" never come to "${to}", so no carrier would be given back`,
      );
      continue;
    }
    if (comesBack(check, from)) {
      check.say(
        [...path, 'from'],
        `parts come back to "${from}" and would take a second carrier; let a station take them that parts pass once`,
      );
      continue;
    }
    const source = stations.get(from);
    const load = source ? loadOf(source) : 1;
    const around = new Ways(raw.stations.filter((other) => other.name !== from));
    for (const station of raw.stations) {
      if (!gathers(station) || !ways.lead(from, station.name)) continue;
      const together = loadOf(station);
      // Where parts without a carrier come too, they fill the batch.
      const others = raw.stations.some(
        (other) =>
          (isSource(other) && other.name !== from && around.lead(other.name, station.name)) ||
          (other.name === to && ways.lead(to, station.name)),
      );
      const carried = number - (number % load);
      if (others || carried >= together) continue;
      check.say(
        [...path, 'number'],
        `${number} ${number === 1 ? 'carrier takes' : 'carriers take'} ${carried} parts at once, but "${station.name}" starts only when ${together} are there; give at least ${Math.ceil(together / load) * load}`,
      );
    }
  }
}
