import type { Machine, Operation } from '../machine.ts';
import type { VisitTime } from '../visit-time.ts';

/** Works on several parts together; the time is that of the part that came first. */
export class Batch implements Operation {
  /** Called when some parts are there, but not all of a batch, where it may never come. */
  private readonly onShort: (() => void) | null;
  private readonly time: VisitTime;
  private readonly parts: number;

  constructor(time: VisitTime, parts: number, onShort: (() => void) | null) {
    this.onShort = onShort;
    this.time = time;
    this.parts = parts;
  }

  ready(machine: Machine): boolean {
    return machine.inbox!.count >= this.parts;
  }

  begin(machine: Machine): boolean {
    if (!this.ready(machine)) {
      if (this.onShort !== null && machine.inbox!.count > 0) this.onShort();
      return false;
    }
    for (let i = 0; i < this.parts; i++) machine.load[i] = machine.inbox!.shift();
    machine.loaded = this.parts;
    machine.cycle = this.time.of(machine.load[0]!);
    return true;
  }
}
