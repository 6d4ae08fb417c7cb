import type { Line } from './line.ts';

/** What sends rejects of a gauging or assembling station to pass, scrap or a rework station, and what undoes that. */
export function sendRejects({ gauges, assemblies, rejectsTo }: Line, station: string, place: string) {
  const there = rejectsTo(place, station);
  const gauge = gauges.get(station);
  if (gauge === undefined) {
    const assembly = assemblies.get(station)!;
    const send = (misfits: typeof assembly.misfits) => () => {
      assembly.misfits = misfits;
    };
    return { on: send({ tight: there, loose: there }), off: send(assembly.misfits) };
  }
  const send = (rejects: typeof there) => () => {
    gauge.rejects = rejects;
  };
  return { on: send(there), off: send(gauge.rejects) };
}
