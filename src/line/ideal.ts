import { meanOf } from '../kernel/distributions/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { isSource, type StationSpec } from '../scenario/stations.ts';
import { workingShare } from './week.ts';

/** What a station could pass on if it never starved or blocked. */
interface Ideal {
  readonly station: string;
  /** Mean working time per part, s. */
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

function secondsPerPart(spec: StationSpec, scenario: Scenario): number {
  const cycle = meanOf(spec.cycle);
  const readable = scenario.stations.reduce(
    (share, at) => (at.does === 'mark' ? share * at.takesHold : share),
    1,
  );
  const byHand = (at: typeof spec) => {
    if (!('reader' in at) || !at.reader || typeof at.reader.unread !== 'object') return 0;
    return at.reader.unread.byHand * (1 - readable * at.reader.reads);
  };
  const handled = (spec.handling?.load ?? 0) + (spec.handling?.unload ?? 0);
  switch (spec.does) {
    case 'form': {
      const sheet = scenario.stocks.find(({ name }) => name === spec.takes)?.thickness?.nominal ?? 0;
      return ((cycle + (spec.heating?.value ?? 0) * sheet) / spec.speed + handled) / spec.perSheet;
    }
    case 'gauge':
      return (cycle + byHand(spec)) / spec.speed / spec.every + handled;
    case 'work':
      return (cycle / spec.speed + handled) / spec.batch;
    default:
      return (cycle + byHand(spec)) / spec.speed + handled;
  }
}

/**
 * Share of the time that one machine is there to work. Time lost is MTTR for each MTBF, the isolated efficiency of the
 * transfer-line literature, several modes by working time adding up (J. A. Buzacott, 1967): what counts the clock
 * takes its share of the calendar, what counts work adds to the time that work takes.
 */
function availability(spec: StationSpec, scenario: Scenario): number {
  const working = meanOf(spec.cycle) / spec.speed;
  let lostPerWorked = 0;
  let left = 1;
  const lose = (every: number, lost: number, counted: string | undefined): void => {
    if (counted === 'clock') left *= every / (every + lost);
    else lostPerWorked += lost / every;
  };
  for (const { every, repair, counted } of spec.breakdowns) lose(meanOf(every), meanOf(repair), counted);
  for (const { cycles, every, takes, counted } of [...spec.setUps, ...spec.maintenance]) {
    lose(cycles === undefined ? meanOf(every!) : cycles * working, meanOf(takes), counted);
  }
  const calendar = scenario.calendars.find(({ name }) => name === spec.calendar);
  return ((calendar ? workingShare(calendar) : 1) * left) / (1 + lostPerWorked);
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

/** Rounds of passing flows on, so that those that come back by a circle of ways settle. */
const MOST_ROUNDS = 10_000;
const SETTLED = 1e-12;

/** The rate the line could reach, from mean times alone: rework, misfits, crews and carriers are left out. */
export function idealLine(scenario: Scenario): IdealLine {
  const alone = new Map(
    scenario.stations.map((spec) => {
      const seconds = secondsPerPart(spec, scenario);
      const available = availability(spec, scenario);
      return [spec.name, { seconds, available, rate: (spec.machines * available) / seconds }];
    }),
  );
  const rateOf = (name: string) => alone.get(name)?.rate ?? Number.POSITIVE_INFINITY;
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
      // Sources without a cycle time pass on without limit.
      return flow !== before && !(Math.abs(flow - before) <= SETTLED * flow);
    });
    flows = next;
    if (!moved) break;
  }
  const stations = scenario.stations.map(({ name }): Ideal => {
    const { seconds, available, rate } = alone.get(name)!;
    return { station: name, secondsPerPart: seconds, availability: available, rate, flow: flows.get(name)! };
  });
  // Of the stations that run full, the slowest sets the pace; sources run full by themselves.
  const full = stations.filter(({ flow, rate }) => flow > 0 && flow >= rate * (1 - 1e-9));
  const slowest = full.reduce((a, b) => (b.rate < a.rate ? b : a));
  return { stations, rate: good, bottleneck: slowest.station };
}
