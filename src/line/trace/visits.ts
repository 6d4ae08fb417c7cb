import { GRADES } from '../../standards/mark-grade.ts';
import type { Line } from '../line.ts';
import type { Machine, Operation } from '../machine.ts';
import { ScrapPile } from '../scrap-pile.ts';
import type { Log } from './log.ts';
import type { PartEvent } from './part-events.ts';
import type { Supply } from './supply.ts';

const FLAWS = ['incomplete', 'webbed', 'thin'] as const;

/** Does what another operation does, and writes down which parts it was begun and ended with. */
export class Visits implements Operation {
  private readonly inner: Operation;
  private readonly station: string;
  private readonly line: Line;
  private readonly log: Log;
  private readonly supply: Supply;

  constructor(inner: Operation, station: string, line: Line, log: Log, supply: Supply) {
    this.inner = inner;
    this.station = station;
    this.line = line;
    this.log = log;
    this.supply = supply;
  }

  ready(machine: Machine): boolean {
    return this.inner.ready(machine);
  }

  begin(machine: Machine): boolean {
    const { log, station } = this;
    // What is read or taken meanwhile happens to a part that has come before.
    const place = log.events.length;
    const { done, pieces } = this.supply.during(() => this.inner.begin(machine));
    if (!done) return false;
    const begun: PartEvent[] = [];
    for (let i = 0; i < machine.loaded; i++) {
      const row = machine.load[i]!;
      const part = log.of(row);
      if (part.station === '') begun.push(log.startedAt(station, row, pieces[0] ?? null, i + 1));
      part.waitsIn?.set(log.now, part.waitsIn.now - 1);
      part.waitsIn = null;
      part.station = station;
      begun.push({ at: log.now, part: part.number, station, kind: 'begins', machine: machine.name });
    }
    log.events.splice(place, 0, ...begun);
    return true;
  }

  finish(machine: Machine): void {
    const { log, station, line } = this;
    const { load } = machine;
    const before = FLAWS.map((flaw) => line.tally[flaw]);
    for (let i = 0; i < machine.loaded; i++)
      log.tell(load[i]!, { station, kind: 'ends', machine: machine.name });
    this.inner.finish?.(machine);
    for (let i = 0; i < machine.loaded; i++) {
      const row = load[i]!;
      if (log.of(row).station === '') log.events.push(log.startedAt(station, row, null, i + 1));
      this.look(row);
    }
    const flaw = FLAWS.find((flaw, i) => line.tally[flaw] > before[i]!);
    if (flaw !== undefined) this.flawed(flaw, machine);
  }

  /** What a part truly is, where that has changed. */
  private look(row: number): void {
    const { log, line, station } = this;
    const { sizes } = log.of(row);
    for (const { spec, truth } of line.features.values()) {
      if (spec.madeAt !== station && !sizes.has(spec.name)) continue;
      const size = line.parts.get(row, truth);
      if (sizes.get(spec.name) === size) continue;
      sizes.set(spec.name, size);
      log.reveal(row, { station, kind: 'size', feature: spec.name, size });
    }
    const mark = line.marks.get(station)?.of(row);
    if (mark === undefined) return;
    const grade = mark.grade === null ? null : GRADES[mark.grade]!;
    log.reveal(row, { station, kind: 'mark', took: mark.took, grade });
  }

  /** All parts of the sheet have a flaw, and those that are not scrapped for it pass unseen. */
  private flawed(flaw: (typeof FLAWS)[number], { load, loaded, outlets }: Machine): void {
    for (let i = 0; i < loaded; i++)
      if (!(outlets[i] instanceof ScrapPile))
        this.log.reveal(load[i]!, { station: this.station, kind: 'flaw', flaw });
  }
}
