import type { Machine, Operation } from '../machine.ts';
import type { Upsets } from '../upset.ts';

/** Does what another operation does, at a speed that is disturbed: a cycle takes as long as its beginning says. */
export class Slowed implements Operation {
  readonly finish?: (machine: Machine) => void;
  private readonly inner: Operation;
  private readonly speed: Upsets;

  constructor(inner: Operation, speed: Upsets) {
    this.inner = inner;
    this.speed = speed;
    if (inner.finish) this.finish = (machine) => inner.finish!(machine);
  }

  ready(machine: Machine): boolean {
    return this.inner.ready(machine);
  }

  begin(machine: Machine): boolean {
    if (!this.inner.begin(machine)) return false;
    machine.cycle /= this.speed.factor();
    return true;
  }
}

/** Does what another operation does, and tells how many parts it was done to. */
export class Counted implements Operation {
  private readonly inner: Operation;
  private readonly tell: (parts: number) => void;

  constructor(inner: Operation, tell: (parts: number) => void) {
    this.inner = inner;
    this.tell = tell;
  }

  ready(machine: Machine): boolean {
    return this.inner.ready(machine);
  }

  begin(machine: Machine): boolean {
    return this.inner.begin(machine);
  }

  finish(machine: Machine): void {
    this.inner.finish?.(machine);
    this.tell(machine.loaded);
  }
}
