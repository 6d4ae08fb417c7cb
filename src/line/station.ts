import type { Buffer } from './buffer.ts';
import type { Machine } from './machine.ts';
import type { Consumer } from './place.ts';
import { STARVED, STATES } from './state.ts';

/** A station: one or several identical machines that draw from one buffer. What is done to it is done to each. */
export class Station implements Consumer {
  readonly name: string;
  readonly machines: readonly Machine[];
  /** Parts put aside unfinished; null where none ever are. */
  aside: { readonly count: number } | null = null;

  constructor(name: string, machines: readonly Machine[]) {
    this.name = name;
    this.machines = machines;
  }

  get inbox(): Buffer | null {
    return this.machines[0]!.inbox;
  }

  get couldStart(): boolean {
    return this.machines.some((machine) => machine.couldStart);
  }

  /** One part has come, or something else that its machines may wait for: the first that can start does. */
  wake(): void {
    const { inbox } = this;
    // Without places in front any of them may be the one that can now be handed a part, so all are asked.
    const places = (inbox?.capacity ?? 0) > 0;
    for (const machine of this.machines) {
      machine.wake();
      if (places && inbox!.count === 0 && !this.aside?.count) return;
    }
  }

  /** Whether a part waits at its door, where it has no places in front and a machine that waits cannot start. */
  get keepsOut(): boolean {
    const { inbox } = this;
    if (inbox === null || inbox.capacity > 0 || !inbox.isAwaited) return false;
    return this.machines.some(({ state }) => state === STARVED);
  }

  /** Whether at least one machine is neither down nor off shift. */
  get up(): boolean {
    return this.machines.some((machine) => machine.up);
  }

  /** Parts on its machines, in front of it and put aside. */
  get crowd(): number {
    const beside = (this.inbox?.held ?? 0) + (this.aside?.count ?? 0);
    return this.machines.reduce((sum, { partsHere }) => sum + partsHere, beside);
  }

  /** Lets machines that wait for room look again, where something else than room may have changed. */
  retry(): void {
    for (const machine of this.machines) if (machine.blockedAt !== null) machine.unload();
  }

  /** @param fate what becomes of the cycles under way */
  stop(fate: number): void {
    for (const machine of this.machines) machine.stop(fate);
  }

  resume(): void {
    for (const machine of this.machines) machine.resume();
  }

  hold(): void {
    for (const machine of this.machines) machine.hold();
  }

  /** @param begins whether its machines may begin at once: not before the line starts */
  release(begins = true): void {
    for (const machine of this.machines) machine.release(begins);
  }

  /** Its machines work at this share of their own speed from their next cycle on. */
  slow(to: number): void {
    for (const machine of this.machines) machine.slow(to);
  }

  /** Seconds in each state up to now by state number, the mean over its machines. */
  seconds(): Float64Array {
    const sum = new Float64Array(STATES.length);
    for (const machine of this.machines) {
      machine.settle();
      for (const [state, seconds] of machine.seconds.entries()) sum[state]! += seconds / this.machines.length;
    }
    return sum;
  }
}
