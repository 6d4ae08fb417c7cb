import { meanOf } from '../kernel/distributions/index.ts';
import { square } from '../kernel/elementary.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { loadOf, type SpecOf, type StationSpec } from '../scenario/stations.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import { samplingPlan } from '../standards/iso-2859.ts';
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
  const varies = time.power === 2 ? time.factor * (square(sheet.lotSd) + square(sheet.ownSd)) : 0;
  return timeFor(time, sheet.nominal) + varies;
}

/** Mean time of one cycle of a gauge, of one part or one lot; `reading` is what reading the mark of a part adds, s. */
function gauged({ inspection, measures }: SpecOf<'gauge'>, cycle: number, reading: number): number {
  const each = measures.reduce((sum, { takes }) => sum + takes, reading);
  switch (inspection.by) {
    case 'count':
      return (cycle + each) / inspection.every;
    // How many of the parts these are depends on how many come, so the best case stands: the others pass in no time.
    case 'clock':
    case 'delivery':
      return 0;
    // Rejected lots that are screened take longer.
    case 'plan':
      return cycle + samplingPlan(inspection.lot, inspection.aql, 'normal').sample * each;
  }
}

/**
 * The mean cycle of a station at its best, from its scenario alone. How many parts a tool leaves with a burr to remove
 * depends on when it is renewed, how long corrections take depends on what is sent to rework, and how many are pressed
 * together depends on sizes: none of these is counted.
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
      return { worked: gauged(spec, cycle, reading()) / spec.speed, handled, parts: loadOf(spec) };
    case 'work':
      return { worked: cycle / spec.speed, handled, parts: spec.batch };
    default:
      return { worked: (cycle + reading()) / spec.speed, handled, parts: 1 };
  }
}
