import type { Scenario } from '../../scenario/scenario.ts';
import type { Client, Crew } from '../crew.ts';
import type { Line } from '../line.ts';
import { tap } from './tap.ts';
import type { TracedCrew, TracedJob } from './trace.ts';

/** Writes down who of each crew was sent where, and when. */
export function followCrews({ crews, calendar }: Line, { stations }: Scenario): TracedCrew[] {
  return [...crews].map(([name, crew]) => {
    const jobs = followCrew(crew, calendar, (place) => stations[place]!.name);
    return { name, number: crew.number, jobs };
  });
}

function followCrew(
  crew: Crew,
  clock: { readonly now: number },
  station: (place: number) => string,
): readonly TracedJob[] {
  const jobs: TracedJob[] = [];
  const called = new Map<Client, number>();
  const open = new Map<Client, number>();
  tap(crew, 'call', (inner) => (client) => {
    called.set(client, clock.now);
    inner(client);
  });
  crew.sending.push((who, client, way) => {
    const { now: sent } = clock;
    open.set(client, jobs.length);
    jobs.push({
      ...{ member: who + 1, station: station(client.place), machine: client.machine.name, job: client.name },
      ...{ called: called.get(client) ?? sent, sent, came: sent + way, left: null },
    });
  });
  tap(crew, 'release', (inner) => (client) => {
    const place = open.get(client)!;
    jobs[place] = { ...jobs[place]!, left: clock.now };
    inner(client);
  });
  return jobs;
}
