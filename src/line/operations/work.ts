import type { Machine, Operation } from '../machine.ts';
import type { VisitTime } from '../visit-time.ts';

/** An operation that takes time and leaves the part as it is, unless it has a `finish` that changes it. */
export class Work implements Operation {
  protected readonly time: VisitTime;

  constructor(time: VisitTime) {
    this.time = time;
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
}
