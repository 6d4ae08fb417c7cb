import { meanOf } from '../kernel/distributions/index.ts';
import { routesOf } from '../scenario/routes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { isSource, type StationSpec } from '../scenario/stations.ts';
import { meanCycle } from './mean-cycle.ts';
import { workingShare } from './week.ts';

/** Rounds of passing flows on, so that those that come back by a circle of ways settle. */
const MOST_ROUNDS = 10_000;
const SETTLED = 1e-12;

/** What a station could pass on if it never starved or blocked. */
interface Ideal {
  readonly station: string;
  /** Mean time per part at work, handling included, s. */
  readonly secondsPerPart: number;
  /** Share of the time that a machine of it is there to work: on shift, not down, not set up. */
  readonly availability: number;
  /** Parts per second. */
  readonly rate: number;
  /** Parts per second that would reach it and pass on through it. */
  readonly flow: number;
}

export interface IdealLine {
  readonly stations: readonly Ideal[];
  /** Parts per second that could leave as good, with no scrap, no rework and no disturbance. */
  readonly rate: number;
  readonly bottleneck: string;
}

/**
 * What one station could do. Time lost is MTTR for each MTBF, the isolated efficiency of the transfer-line literature,
 * several modes by working time adding up (J. A. Buzacott, 1967). What counts work or cycles adds to the time that a
 * cycle takes. Breakdowns by the clock stretch the work, but neither handling nor a repair, which go on meanwhile; planned
 * tasks by the clock take their share of the calendar, and any planned task comes once a cycle at most. Handling takes time and wears nothing.
 */
function alone(spec: StationSpec, scenario: Scenario): Omit<Ideal, 'station' | 'flow'> {
  const { worked, handled, parts } = meanCycle(spec, scenario);
  const busy = worked + handled;
  let lostPerCycle = 0;
  let up = 1;
  for (const { every, repair, counted } of spec.breakdowns) {
    const [life, lost] = [meanOf(every), meanOf(repair)];
    if (counted === 'clock') up *= life / (life + lost);
    else lostPerCycle += (worked / life) * lost;
  }
  const calendar = scenario.calendars.find(({ name }) => name === spec.calendar);
  let there = calendar ? workingShare(calendar) : 1;
  for (const { cycles, every, takes, counted } of [...spec.setUps, ...spec.maintenance]) {
    const lost = meanOf(takes);
    if (cycles !== undefined) lostPerCycle += lost / cycles;
    else if (counted === 'working') lostPerCycle += Math.min(1, worked / meanOf(every!)) * lost;
    else there *= 1 - lost / (Math.max(meanOf(every!), busy) + lost);
  }
  const cycle = worked / up + handled + lostPerCycle;
  return {
    secondsPerPart: busy / parts,
    availability: cycle === 0 ? there * up : (there * busy) / cycle,
    rate: (spec.machines * there * parts) / cycle,
  };
}

/**
 * What each station can pass on in the long run, given what those behind it take: a way by share to a buffer with an
 * end can carry no more than the station there passes on, and so holds up all that the station sends; where the ways
 * with room are taken, they carry what all of them take together.
 */
function passingOn(scenario: Scenario, rates: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const endless = new Set(
    scenario.stations.flatMap((spec) =>
      'buffer' in spec && spec.buffer?.places === Number.POSITIVE_INFINITY ? [spec.name] : [],
    ),
  );
  const able = new Map(rates);
  const taken = (name: string) =>
    (endless.has(name) ? undefined : able.get(name)) ?? Number.POSITIVE_INFINITY;
  const most = ({ to: { by, routes } }: StationSpec): number =>
    by === 'only' || by === 'share'
      ? Math.min(...routes.map((way) => taken(way.to) / way.share))
      : routes.reduce((sum, way) => sum + taken(way.to), 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = false;
    for (const spec of scenario.stations) {
      // Where no room is found the part is turned away, and the next comes all the same.
      if (spec.does === 'arrive' && spec.whenFull === 'lost') continue;
      const now = Math.min(able.get(spec.name)!, most(spec));
      if (now < able.get(spec.name)! * (1 - SETTLED)) moved = true;
      able.set(spec.name, now);
    }
    if (!moved) break;
  }
  return able;
}

/** What each way of a station gets of `out` parts per second, given what each station can take. */
function split({ to }: StationSpec, out: number, rateOf: (station: string) => number): [string, number][] {
  if (to.by === 'only' || to.by === 'share') return to.routes.map((way) => [way.to, out * way.share]);
  // The first takes what it can, the rest goes on; what nobody can take waits with the last.
  let left = out;
  return to.routes.map((way, i) => {
    const taken = i === to.routes.length - 1 ? left : Math.min(left, rateOf(way.to));
    left -= taken;
    return [way.to, taken];
  });
}

/** The rate the line could reach, from mean times alone: rework, misfits, crews and carriers are left out. */
export function idealLine(scenario: Scenario): IdealLine {
  const each = new Map(scenario.stations.map((spec) => [spec.name, alone(spec, scenario)]));
  const able = passingOn(scenario, new Map([...each].map(([name, { rate }]) => [name, rate])));
  const rateOf = (name: string) => able.get(name) ?? Number.POSITIVE_INFINITY;
  let flows = new Map<string, number>();
  let good = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const reaching = new Map<string, number>();
    for (const spec of scenario.stations) {
      if (spec.does === 'rework') continue;
      const out = isSource(spec) ? rateOf(spec.name) : (flows.get(spec.name) ?? 0);
      for (const [to, part] of split(spec, out, rateOf)) reaching.set(to, (reaching.get(to) ?? 0) + part);
    }
    good = reaching.get('good') ?? 0;
    const next = new Map(
      scenario.stations.map((spec) => {
        if (spec.does === 'rework') return [spec.name, 0];
        return [
          spec.name,
          isSource(spec) ? rateOf(spec.name) : Math.min(rateOf(spec.name), reaching.get(spec.name) ?? 0),
        ];
      }),
    );
    const moved = [...next].some(([name, flow]) => {
      const before = flows.get(name) ?? 0;
      if (flow === before) return false;
      // Stations without a cycle time pass on without limit.
      return !Number.isFinite(flow) || Math.abs(flow - before) > SETTLED * flow;
    });
    flows = next;
    if (!moved) break;
  }
  const stations = [...each].map(([station, own]): Ideal => ({ station, ...own, flow: flows.get(station)! }));
  return { stations, rate: good, bottleneck: bottleneckOf(stations, scenario) };
}

/** Of the stations that run full, those with none such behind them set the pace; of these the slowest is told. */
function bottleneckOf(stations: readonly Ideal[], scenario: Scenario): string {
  const next = new Map(scenario.stations.map((spec) => [spec.name, routesOf(spec)]));
  const full = stations.filter(({ flow, rate }) => flow > 0 && flow >= rate * (1 - 1e-9));
  const names = new Set(full.map(({ station }) => station));
  const isLast = ({ station }: Ideal): boolean => {
    const behind = new Set(next.get(station));
    for (const name of behind) for (const further of next.get(name) ?? []) behind.add(further);
    behind.delete(station);
    return ![...behind].some((name) => names.has(name));
  };
  const last = full.filter(isLast);
  const candidates = last.length > 0 ? last : full.length > 0 ? full : stations;
  return candidates.reduce((a, b) => (b.rate < a.rate ? b : a)).station;
}
