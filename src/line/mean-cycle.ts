import { meanOf } from '../kernel/distributions/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';

/** One cycle of a machine in its mean times, s, and the parts that it passes on. */
export interface MeanCycle {
  readonly worked: number;
  readonly handled: number;
  readonly parts: number;
}

/**
 * The mean cycle of a station at its best, from its scenario alone. How many parts a tool leaves with a burr to remove
 * depends on when it is renewed, and how long corrections take depends on what is sent to rework: neither is counted.
 */
export function meanCycle(spec: StationSpec, scenario: Scenario): MeanCycle {
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
      const worked = (cycle + (spec.heating?.value ?? 0) * sheet) / spec.speed;
      return { worked, handled, parts: spec.perSheet };
    }
    case 'gauge':
      return { worked: (cycle + byHand(spec)) / spec.speed / spec.every, handled, parts: 1 };
    case 'work':
      return { worked: cycle / spec.speed, handled, parts: spec.batch };
    default:
      return { worked: (cycle + byHand(spec)) / spec.speed, handled, parts: 1 };
  }
}
