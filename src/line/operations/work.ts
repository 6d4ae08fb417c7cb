import type { Place } from '../place.ts';
import type { Operation, Station } from '../station.ts';
import type { VisitTime } from '../visit-time.ts';

/** An operation that takes time and leaves the part as it is. */
export class Work implements Operation {
  readonly ready: boolean = true;
  protected readonly time: VisitTime;
  protected readonly next: Place;

  constructor(time: VisitTime, next: Place) {
    this.time = time;
    this.next = next;
  }

  begin(station: Station): boolean {
    const inbox = station.inbox!;
    if (inbox.count === 0) return false;
    const row = inbox.take(0);
    station.load[0] = row;
    station.loaded = 1;
    station.cycle = this.time.of(row);
    return true;
  }

  finish(station: Station): void {
    this.alter(station.load[0]!);
    station.outlets[0] = this.next;
  }

  /** What the operation does to the part. */
  protected alter(_row: number): void {}
}
