import type { Scenario } from '../../scenario/scenario.ts';
import type { Line } from '../line.ts';
import type { Place } from '../place.ts';
import type { Station } from '../station.ts';
import type { Tool } from '../tool.ts';

/** What is needed while a line is built, and no longer. */
export class Plan {
  readonly scenario: Scenario;
  readonly line: Line;
  /** Column: 1 when the part's mark took. Without a marking station every part counts as marked. */
  readonly marked: number;
  /** Column of the mark's grade, as its place in `GRADES`; null where all are alike. */
  readonly grade: number | null;
  /** Column: the number of the delivery that the part was made from; null where nobody asks for it. */
  readonly delivery: number | null;
  /** Where good parts leave. */
  out: Place;
  /** Where the parts of each station go on to. */
  readonly next = new Map<string, Place>();
  /** The tools of each trimming station that has any, by machine. */
  readonly tools = new Map<string, readonly Tool[]>();

  constructor(scenario: Scenario, line: Line) {
    this.scenario = scenario;
    this.line = line;
    this.out = line.good;
    this.marked = line.parts.column(scenario.stations.some(({ does }) => does === 'mark') ? 0 : 1);
    const graded =
      scenario.stations.some(
        (spec) => spec.does === 'mark' && (spec.grades !== undefined || spec.quality !== undefined),
      ) || scenario.disturbances.some((it) => it.disturbs === 'marks' && it.grades !== undefined);
    this.grade = graded ? line.parts.column(0) : null;
    const asks = scenario.stations.some((spec) => spec.does === 'gauge' && spec.inspection.by === 'delivery');
    this.delivery = asks ? line.parts.column(-1) : null;
  }

  station(name: string): Station {
    return this.line.stations.get(name)!;
  }

  /** The station's number, by which crews know where it stands. */
  place(name: string): number {
    return this.scenario.stations.findIndex((spec) => spec.name === name);
  }
}
