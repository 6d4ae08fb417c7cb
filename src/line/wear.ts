import type { Breakdown } from './breakdown.ts';
import type { Machine } from './machine.ts';

/** The breakdowns of a machine that count its working time. The next to fall due stands in the machine. */
export class Wear {
  readonly breakdowns: Breakdown[] = [];
  private readonly machine: Machine;

  constructor(machine: Machine) {
    this.machine = machine;
  }

  /** Tells the machine anew when the next falls due. */
  settle(): void {
    let next = Number.POSITIVE_INFINITY;
    for (const { dueAt } of this.breakdowns) next = Math.min(next, dueAt);
    this.machine.wornAt(next);
  }

  /** Lets the one that is due happen. */
  fail(): void {
    let due = this.breakdowns[0]!;
    for (const breakdown of this.breakdowns) if (breakdown.dueAt < due.dueAt) due = breakdown;
    due.dueAt = Number.POSITIVE_INFINITY;
    this.settle();
    due.fail();
  }
}
