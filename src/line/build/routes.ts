import { uniformBlocks } from '../../kernel/distributions/uniform.ts';
import { reroutesIn } from '../../scenario/reroutes.ts';
import type { SpecOf, StationSpec } from '../../scenario/stations.ts';
import { OffCarriers } from '../carriers.ts';
import { Detour } from '../detour.ts';
import { OrAway } from '../operations/arrive.ts';
import type { Place } from '../place.ts';
import { toRework } from '../rejects.ts';
import { ByRoom, ByShare, type Way } from '../routes.ts';
import { Behind } from '../skip/behind.ts';
import type { Plan } from './plan.ts';
import { addSkips } from './skips.ts';

function placeOf(name: string, plan: Plan): Place {
  return name === 'good' ? plan.out : plan.line.entrance(name);
}

function wayOf(to: string, share: number, plan: Plan): Way {
  const station = plan.line.stations.get(to);
  return {
    place: placeOf(to, plan),
    share,
    crowd: () => station?.crowd ?? 0,
    up: () => station?.up ?? true,
  };
}

function choice({ name, to }: StationSpec, plan: Plan): Place {
  if (to.by === 'only') return placeOf(to.routes[0]!.to, plan);
  const { parts, streams } = plan.line;
  const ways = to.routes.map((route) => wayOf(route.to, route.share, plan));
  if (to.by !== 'share') return new ByRoom(ways, to.by === 'state');
  const luck = {
    column: parts.luck(uniformBlocks(streams.of(`station/${name}/route`))),
    again: streams.of(`station/${name}/route/again`),
  };
  return new ByShare(ways, parts, luck);
}

/** Where the parts of each station go on to, by way of giving carriers back and turning arrivals away. */
export function addRoutes(plan: Plan): void {
  const { line, scenario } = plan;
  plan.out = line.demand ?? line.good;
  addSkips(plan);
  const rerouted = new Set(reroutesIn(scenario).map(([at]) => at));
  for (const spec of scenario.stations) {
    let next = choice(spec, plan);
    if (rerouted.has(spec.name)) {
      const detour = new Detour(next);
      line.detours.set(spec.name, detour);
      next = detour;
    }
    for (const { name, to } of scenario.carriers) {
      if (to === spec.name) next = new OffCarriers(line.carriers.get(name)!, next);
    }
    if (spec.does === 'arrive' && spec.whenFull === 'lost') {
      next = new OrAway(next, line.turnedAway);
      line.turnsAway = true;
    }
    const bypass = line.bypasses.get(spec.name);
    if (bypass) {
      bypass.past = next;
      if (bypass.owed) next = new Behind(next, plan.out, bypass.owed);
    }
    plan.next.set(spec.name, next);
  }
  addRejects(plan);
}

function addRejects({ line, scenario, next }: Plan): void {
  const reworked = line.parts.column(0);
  line.reworked = reworked;
  const benches = scenario.stations.filter(({ does }) => does === 'rework') as (SpecOf<'rework'> & {
    readonly name: string;
  })[];
  const visits = new Map(benches.map(({ name }) => [name, line.parts.column(0)]));
  line.rejectsTo = (place, station, cause) => {
    const scrap = line.scrapFor(station, cause);
    if (place === 'scrap') return () => scrap;
    const on = next.get(station)!;
    if (place === 'pass') return () => on;
    const { limit } = benches.find(({ name }) => name === place)!;
    const columns = { visits: visits.get(place)!, reworked };
    return toRework(line.stations.get(place)!.inbox!, limit, scrap, line.parts, columns, line.tally);
  };
}
