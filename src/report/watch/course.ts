import type { Playback } from './playback.ts';

/** How a part is where it is. */
export type Manner = 'waits' | 'cycle' | 'stands' | 'aside' | 'kept' | 'gone';

/** Where a part is from one of its events on, as far as its course alone tells. */
export interface Stage {
  readonly manner: Manner;
  /** The place of the station among those of the run. */
  readonly station: number;
  readonly machine: number;
  /** The event at which this changes; beyond the last where it never does. */
  readonly until: number;
}

const MANNERS: Readonly<Record<string, Manner>> = {
  ...{ waits: 'waits', begins: 'cycle', ends: 'stands', aside: 'aside', kept: 'kept' },
  ...{ good: 'gone', scrapped: 'gone', 'turned-away': 'gone' },
};

/** The stages of every course, one behind each event. */
export function stagesOf({ courses, stations }: Pick<Playback, 'courses' | 'stations'>): Stage[][] {
  const numbers = new Map(stations.map(({ name }, i) => [name, i]));
  return courses.map((events) => {
    const stages: Stage[] = [];
    let until = events.length;
    // Backwards, as a stage lasts until the next event that begins one.
    for (let i = events.length - 1; i >= 0; i--) {
      const event = events[i]!;
      const station = numbers.get(event.station)!;
      const manner = MANNERS[event.kind] ?? (i === 0 ? 'stands' : undefined);
      if (manner === undefined) continue;
      const machine = 'machine' in event ? stations[station]!.names.indexOf(String(event.machine)) : 0;
      stages[i] = { manner, station, machine, until };
      until = i;
    }
    // What is only seen of a part leaves it where it is.
    for (let i = 1; i < events.length; i++) stages[i] ??= stages[i - 1]!;
    return stages;
  });
}
