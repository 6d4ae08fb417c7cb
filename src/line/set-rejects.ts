import type { Line } from './line.ts';

/** What sends rejects of a gauging or assembling station to pass, scrap or a rework station, and what undoes that. */
export function sendRejects({ gauges, assemblies, rejectsTo }: Line, station: string, place: string) {
  const gauge = gauges.get(station);
  if (gauge === undefined) {
    const assembly = assemblies.get(station)!;
    const there = {
      tight: rejectsTo(place, station, 'tight'),
      loose: rejectsTo(place, station, 'loose'),
      flawed: rejectsTo(place, station, 'flawed'),
    };
    const send = (misfits: typeof assembly.misfits) => () => {
      assembly.misfits = misfits;
    };
    return { on: send(there), off: send(assembly.misfits) };
  }
  const there = rejectsTo(place, station, 'off-limits');
  const send = (rejects: typeof there) => () => {
    gauge.rejects = rejects;
  };
  return { on: send(there), off: send(gauge.rejects) };
}
