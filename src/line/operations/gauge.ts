import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Feature } from '../features.ts';
import type { Flaw } from '../flaw.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { Reader } from '../reader.ts';
import type { Rejects } from '../rejects.ts';
import type { VisitTime } from '../visit-time.ts';

/** How one feature is read: its true value, plus a bias, plus the repeatability times a deviate. */
interface Gauging {
  readonly feature: Feature;
  readonly bias: number;
  readonly repeatability: number;
  /** Column of the part's deviate for the first reading, and draws for later ones. */
  readonly luck: number;
  readonly again: Sampler;
}

/** Told of every reading. `row` is the part when its mark could be read, else null. */
export type ReadingListener = (feature: Feature, reading: number, row: number | null) => void;

export interface GaugeParts {
  readonly time: VisitTime;
  readonly next: Place;
  readonly scrap: Place;
  readonly parts: PartTable;
  readonly reader: Reader | null;
  /** Column: 1 when the part's mark took. */
  readonly marked: number;
  readonly gaugings: readonly Gauging[];
  /** Which parts have a flaw that shows when they are gauged. */
  readonly flaw: Flaw | null;
}

/** Gauges one part in `every` and judges its readings; the others pass in no time. */
export class Gauge implements Operation {
  every: number;
  rejects: Rejects;
  readonly reader: Reader | null;
  readonly readingListeners: ReadingListener[] = [];
  /** Told of every judgement: whether the part was off limits. */
  readonly judgementListeners: ((off: boolean) => void)[] = [];
  private readonly on: GaugeParts;
  private arrived = 0;
  /** By machine: whether the part on it is gauged, and whether it is known which part it is. */
  private readonly gauged: boolean[] = [];
  private readonly known: boolean[] = [];
  /** By machine: where the part on it goes that is not gauged; null for on. */
  private readonly sent: (Place | null)[] = [];

  constructor(on: GaugeParts, every: number, rejects: Rejects) {
    this.on = on;
    this.reader = on.reader;
    this.every = every;
    this.rejects = rejects;
  }

  ready(): boolean {
    return true;
  }

  begin(machine: Machine): boolean {
    const inbox = machine.inbox!;
    if (inbox.count === 0) return false;
    const row = inbox.shift();
    machine.load[0] = row;
    machine.loaded = 1;
    const gauged = ++this.arrived % this.every === 0;
    this.gauged[machine.slot] = gauged;
    this.sent[machine.slot] = null;
    machine.cycle = 0;
    if (gauged) this.load(machine, row);
    return true;
  }

  /** Finds out which part it is; then it is gauged, unless it is sent to be marked anew. */
  private load(machine: Machine, row: number): void {
    const { parts, marked, time } = this.on;
    const { reader } = this;
    const { slot } = machine;
    this.known[slot] = reader ? reader.read(row) : parts.get(row, marked) === 1;
    machine.cycle = reader?.seconds ?? 0;
    this.sent[slot] = reader?.sent ?? null;
    if (this.sent[slot] === null) machine.cycle += time.of(row);
    else this.gauged[slot] = false;
  }

  finish(machine: Machine): void {
    const { slot, load } = machine;
    machine.outlets[0] = this.gauged[slot]
      ? this.judge(load[0]!, this.known[slot]!)
      : (this.sent[slot] ?? this.on.next);
  }

  private judge(row: number, known: boolean): Place {
    const { parts, flaw } = this.on;
    let off = flaw?.isAt(row) === true;
    for (const { feature, bias, repeatability, luck, again } of this.on.gaugings) {
      const reading = parts.get(row, feature.truth) + bias + repeatability * parts.get(row, luck);
      parts.set(row, luck, again());
      const { limits } = feature.spec;
      if (limits !== null && (reading < limits.lower || reading > limits.upper)) off = true;
      if (known) parts.set(row, feature.reading, reading);
      for (const listener of this.readingListeners) listener(feature, reading, known ? row : null);
    }
    for (const listener of this.judgementListeners) listener(off);
    if (!known && this.reader?.spec.unread.scraps) return this.on.scrap;
    return off ? this.rejects(row) : this.on.next;
  }
}
