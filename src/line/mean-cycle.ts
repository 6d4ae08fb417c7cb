import { meanOf } from '../kernel/distributions/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import { type SheetTime, timeFor } from '../standards/sheet-heating.ts';
import { markersOf, readShare } from './read-share.ts';

/** One cycle of a machine in its mean times, s, and the parts that it passes on. */
export interface MeanCycle {
  readonly worked: number;
  readonly handled: number;
  readonly parts: number;
}

/** Mean of a time that goes by the thickness of the sheet, s: the mean of its square is that of the mean and the variance. */
function bySheet(time: SheetTime | undefined, sheet: StockSpec['thickness']): number {
  if (!time || !sheet) return 0;
  const varies = time.power === 2 ? time.factor * (sheet.lotSd ** 2 + sheet.ownSd ** 2) : 0;
  return timeFor(time, sheet.nominal) + varies;
}

/**
 * The mean cycle of a station at its best, from its scenario alone. How many parts a tool leaves with a burr to remove
 * depends on when it is renewed, and how long corrections take depends on what is sent to rework: neither is counted.
 */
export function meanCycle(spec: StationSpec, scenario: Scenario): MeanCycle {
  const cycle = meanOf(spec.cycle);
  // A part that is marked anew comes again, and is worked on then.
  const reading = () => {
    if (!('reader' in spec) || !spec.reader) return 0;
    const { read, tries } = readShare(markersOf(scenario), spec.reader);
    return (tries - 1) * spec.reader.retry + (1 - read) * (spec.reader.unread.byHand ?? 0);
  };
  const handled = (spec.handling?.load ?? 0) + (spec.handling?.unload ?? 0);
  switch (spec.does) {
    case 'form': {
      const { thickness } = scenario.stocks.find(({ name }) => name === spec.takes)!;
      const worked =
        (cycle + bySheet(spec.heating, thickness) + bySheet(spec.cooling, thickness)) / spec.speed;
      return { worked, handled, parts: spec.perSheet };
    }
    case 'gauge':
      return { worked: (cycle + reading()) / spec.speed / spec.every, handled, parts: 1 };
    case 'work':
      return { worked: cycle / spec.speed, handled, parts: spec.batch };
    default:
      return { worked: (cycle + reading()) / spec.speed, handled, parts: 1 };
  }
}
