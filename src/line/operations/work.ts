import type { Machine, Operation } from '../machine.ts';
import type { Place } from '../place.ts';
import type { VisitTime } from '../visit-time.ts';

/** An operation that takes time and leaves the part as it is. */
export class Work implements Operation {
  protected readonly time: VisitTime;
  protected readonly next: Place;

  constructor(time: VisitTime, next: Place) {
    this.time = time;
    this.next = next;
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
    machine.cycle = this.time.of(row);
    return true;
  }

  finish(machine: Machine): void {
    this.alter(machine.load[0]!);
    machine.outlets[0] = this.next;
  }

  /** What the operation does to the part. */
  protected alter(_row: number): void {}
}
