import type { Calendar } from '../../kernel/calendar.ts';
import type { Feature } from '../features.ts';
import type { Flaw } from '../flaw.ts';
import type { Appraisers, Gauging } from '../gauging.ts';
import type { Machine, Operation } from '../machine.ts';
import type { PartTable } from '../part-table.ts';
import type { Place } from '../place.ts';
import type { GaugeProbe } from '../probes/gauge-probe.ts';
import type { Reader } from '../reader.ts';
import type { Rejects } from '../rejects.ts';
import type { Sampling } from '../sampling.ts';
import { type AsBegun, UnsettledReading } from '../unsettled.ts';
import type { VisitTime } from '../visit-time.ts';

/** Told of every reading. `row` is the part when its mark could be read, else null. */
export type ReadingListener = (feature: Feature, reading: number, row: number | null) => void;

export interface GaugeParts {
  readonly time: VisitTime;
  /** Time that all readings of one part take, s. */
  readonly takes: number;
  readonly next: Place;
  /** Scrap of what is not known for want of a mark. */
  readonly unread: Place;
  readonly calendar: Calendar;
  readonly parts: PartTable;
  readonly reader: Reader | null;
  /** Column: 1 when the part's mark took. */
  readonly marked: number;
  readonly gaugings: readonly Gauging[];
  /** Which parts have a flaw that shows when they are gauged. */
  readonly flaw: Flaw | null;
  /** Null where only one reads. */
  readonly appraisers: Appraisers | null;
  /** Column: 1 for a part that was chosen, but sent to be marked anew; null where none are. */
  readonly owed: number | null;
}

/** Gauges the parts that the sampling chooses and judges their readings; the others pass in no time. */
export class Gauge implements Operation {
  sampling: Sampling;
  rejects: Rejects;
  readonly reader: Reader | null;
  readonly readingListeners: ReadingListener[] = [];
  /** Told of every judgement: whether the part was off limits. */
  readonly judgementListeners: ((off: boolean) => void)[] = [];
  /** Compares judgements with the truth; null while nobody asks. */
  probe: GaugeProbe | null = null;
  /** What its readings are taken by, where something disturbs them; null where nothing does. */
  protected as: AsBegun | null = null;
  readonly on: GaugeParts;
  /** By machine: whether the part on it is gauged, and whether it is known which part it is. */
  private readonly gauged: boolean[] = [];
  private readonly known: boolean[] = [];
  /** By machine: where the part on it goes that is not gauged; null for on. */
  private readonly sent: (Place | null)[] = [];

  constructor(on: GaugeParts, sampling: Sampling, rejects: Rejects) {
    this.on = on;
    this.reader = on.reader;
    this.sampling = sampling;
    this.rejects = rejects;
  }

  /** What can disturb its readings of a feature, or of all that it measures. */
  unsettle(feature: string | undefined): UnsettledReading[] {
    this.as ??= { slot: null };
    const { as, on } = this;
    return on.gaugings
      .filter((gauging) => feature === undefined || gauging.feature.spec.name === feature)
      .map((gauging) => {
        gauging.upset ??= new UnsettledReading(on.calendar, as);
        return gauging.upset;
      });
  }

  ready(_machine: Machine): boolean {
    return true;
  }

  begin(machine: Machine): boolean {
    const inbox = machine.inbox!;
    if (inbox.count === 0) return false;
    const row = inbox.shift();
    machine.load[0] = row;
    machine.loaded = 1;
    const gauged = this.isOwed(row) || this.sampling.chooses(row, this.on.calendar.now);
    this.gauged[machine.slot] = gauged;
    this.sent[machine.slot] = null;
    machine.cycle = 0;
    if (!gauged) return true;
    const known = this.identify(machine, row);
    this.known[machine.slot] = known;
    const sent = this.reader?.sent ?? null;
    this.sent[machine.slot] = sent;
    if (sent === null) machine.cycle += this.on.time.of(row) + this.on.takes;
    else this.putOff(machine, row);
    return true;
  }

  finish(machine: Machine): void {
    const { slot, load } = machine;
    machine.outlets[0] = this.gauged[slot]
      ? this.judge(load[0]!, this.known[slot]!)
      : (this.sent[slot] ?? this.on.next);
  }

  /** A part that was chosen, but sent to be marked anew, is gauged when it comes again. */
  private isOwed(row: number): boolean {
    const { parts, owed } = this.on;
    if (owed === null || parts.get(row, owed) === 0) return false;
    parts.set(row, owed, 0);
    return true;
  }

  private putOff(machine: Machine, row: number): void {
    this.gauged[machine.slot] = false;
    this.on.parts.set(row, this.on.owed!, 1);
  }

  /** Whether it is known which part this is; to find out takes the machine time. One that `stays` is not marked anew. */
  protected identify(machine: Machine, row: number, stays = false): boolean {
    const { parts, marked } = this.on;
    if (this.reader === null) return parts.get(row, marked) === 1;
    const known = this.reader.read(row, stays);
    machine.cycle += this.reader.seconds;
    return known;
  }

  /** Takes and tells the readings of a part and the judgement of it, and says where it goes. */
  protected judge(row: number, known: boolean): Place {
    const off = this.take(row, known);
    if (!known && this.reader?.spec.unread.scraps) return this.on.unread;
    return off ? this.rejects(row) : this.on.next;
  }

  /** Takes and tells the readings of a part and the judgement of it: whether it is off limits. */
  protected take(row: number, known: boolean): boolean {
    const { parts, gaugings, appraisers, flaw } = this.on;
    const appraiser = appraisers === null ? 0 : appraisers.of(row);
    let off = flaw?.isAt(row) === true;
    for (const gauging of gaugings) {
      const reading = gauging.read(row, appraiser);
      gauging.renew(row);
      const outside = gauging.isOff(reading);
      if (outside) off = true;
      const { feature, sums } = gauging;
      if (sums !== null) sums.add(reading - feature.spec.aim);
      if (this.probe !== null) this.probe.see(feature.spec, parts.get(row, feature.truth), outside);
      if (known) parts.set(row, feature.reading, reading);
      for (const listener of this.readingListeners) listener(feature, reading, known ? row : null);
    }
    if (appraisers !== null) appraisers.renew(row);
    if (this.probe !== null) this.probe.judged(off);
    for (const listener of this.judgementListeners) listener(off);
    return off;
  }
}
