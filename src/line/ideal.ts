import { meanOf } from '../kernel/distributions/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { isSource, type StationSpec } from '../scenario/stations.ts';

/** What a station could pass on if it never starved or blocked. */
interface Ideal {
  readonly station: string;
  /** Mean working time per part, s. */
  readonly secondsPerPart: number;
  /** Share of the time it is not down by its own breakdowns. */
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
  switch (spec.does) {
    case 'form': {
      const sheet = scenario.stocks.find(({ name }) => name === spec.takes)?.thickness?.nominal ?? 0;
      return (cycle + (spec.heating?.value ?? 0) * sheet) / spec.perSheet;
    }
    case 'gauge':
      return (cycle + byHand(spec)) / spec.every;
    default:
      return cycle + byHand(spec);
  }
}

/** Availability as MTBF / (MTBF + MTTR), the isolated efficiency of the transfer-line literature. */
function availability({ breakdown }: StationSpec): number {
  if (!breakdown) return 1;
  const life = meanOf(breakdown.every);
  return life / (life + meanOf(breakdown.repair));
}

/** The rate the line could reach, from mean times alone: rework stations and misfits are left out. */
export function idealLine(scenario: Scenario): IdealLine {
  const found = new Map<string, Ideal>();
  const flowOf = (spec: StationSpec): number => {
    const known = found.get(spec.name);
    if (known) return known.flow;
    const seconds = secondsPerPart(spec, scenario);
    const available = availability(spec);
    const rate = available / seconds;
    const reaching = isSource(spec)
      ? Number.POSITIVE_INFINITY
      : scenario.stations
          .filter(({ to, does }) => to === spec.name && does !== 'rework')
          .reduce((sum, feeder) => sum + flowOf(feeder), 0);
    const flow = spec.does === 'rework' ? 0 : Math.min(rate, reaching);
    found.set(spec.name, {
      station: spec.name,
      secondsPerPart: seconds,
      availability: available,
      rate,
      flow,
    });
    return flow;
  };
  const rate = scenario.stations
    .filter(({ to }) => to === 'good')
    .reduce((sum, spec) => sum + flowOf(spec), 0);
  for (const spec of scenario.stations) flowOf(spec);
  const stations = scenario.stations.map(({ name }) => found.get(name)!);
  // Of the stations that run full, the slowest sets the pace; sources run full by themselves.
  const full = stations.filter(({ flow, rate }) => flow > 0 && flow >= rate);
  const slowest = full.reduce((a, b) => (b.rate < a.rate ? b : a));
  return { stations, rate, bottleneck: slowest.station };
}
