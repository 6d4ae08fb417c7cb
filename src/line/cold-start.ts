import { exp } from '../kernel/elementary.ts';
import type { Machine } from './machine.ts';

export interface ColdRules {
  /** A machine that idled for longer than this is cold, s. */
  readonly after: number;
  /** How much the setting is off at its first sheet then. */
  readonly by: number;
  /** Seconds in which that fades to 37 % of itself. */
  readonly fades: number;
}

/**
 * How a setting is off at a machine that idled, which fades from its first sheet on. Machines start cold. One that warms
 * up before it works on the sheet is not off.
 */
export class ColdStart {
  private readonly rules: ColdRules;
  /** By machine: when it began to work again, s. */
  private readonly begun: Float64Array;

  constructor(rules: ColdRules, machines: number) {
    this.rules = rules;
    this.begun = new Float64Array(machines).fill(Number.NEGATIVE_INFINITY);
  }

  /** The deviation for the sheet that the machine is taking now. */
  at({ slot, lastWorked, care }: Machine, now: number): number {
    const { after, by, fades } = this.rules;
    if (care?.warmUp?.isNeeded === true) this.begun[slot] = Number.NEGATIVE_INFINITY;
    else if (now - lastWorked > after) this.begun[slot] = now;
    return by * exp((this.begun[slot]! - now) / fades);
  }
}
