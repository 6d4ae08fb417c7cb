import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { Feature } from '../features.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { Reader } from '../reader.ts';
import type { Rejects } from '../rejects.ts';
import type { Operation, Station } from '../station.ts';
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
  /** Column: 1 when the part's mark can be read. */
  readonly marked: number;
  readonly gaugings: readonly Gauging[];
}

/** Gauges one part in `every` and judges its readings; the others pass in no time. */
export class Gauge implements Operation {
  readonly ready = true;
  every: number;
  rejects: Rejects;
  readonly reader: Reader | null;
  readonly readingListeners: ReadingListener[] = [];
  /** Told of every judgement: whether the part was off limits. */
  readonly judgementListeners: ((off: boolean) => void)[] = [];
  readonly #on: GaugeParts;
  #arrived = 0;
  #gauged = false;
  #known = true;

  constructor(on: GaugeParts, every: number, rejects: Rejects) {
    this.#on = on;
    this.reader = on.reader;
    this.every = every;
    this.rejects = rejects;
  }

  begin(station: Station): boolean {
    const inbox = station.inbox!;
    if (inbox.count === 0) return false;
    const row = inbox.take(0);
    station.load[0] = row;
    station.loaded = 1;
    this.#gauged = ++this.#arrived % this.every === 0;
    station.cycle = 0;
    if (!this.#gauged) return true;
    station.cycle = this.#on.time.of(row);
    const { parts, marked } = this.#on;
    this.#known = this.reader ? this.reader.read(row) : parts.get(row, marked) === 1;
    const unread = this.reader?.spec.unread;
    if (!this.#known && typeof unread === 'object') {
      station.cycle += unread.byHand;
      this.#known = true;
    }
    return true;
  }

  finish(station: Station): void {
    station.outlets[0] = this.#gauged ? this.#judge(station.load[0]!) : this.#on.next;
  }

  #judge(row: number): Place {
    const parts = this.#on.parts;
    let off = false;
    for (const { feature, bias, repeatability, luck, again } of this.#on.gaugings) {
      const reading = parts.get(row, feature.truth) + bias + repeatability * parts.get(row, luck);
      parts.set(row, luck, again());
      const { nominal, tolerance } = feature.spec;
      if (tolerance !== undefined && Math.abs(reading - nominal) > tolerance) off = true;
      if (this.#known) parts.set(row, feature.reading, reading);
      for (const listener of this.readingListeners) listener(feature, reading, this.#known ? row : null);
    }
    for (const listener of this.judgementListeners) listener(off);
    if (!this.#known && this.reader?.spec.unread === 'scrap') return this.#on.scrap;
    return off ? this.rejects(row) : this.#on.next;
  }
}
