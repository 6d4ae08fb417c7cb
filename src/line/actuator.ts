/** How rounding may hide that a limit is a whole number of steps away. */
const ROUNDING = 1e-9;

export interface ActuatorRules {
  /** Whole steps that the target moves by; 0 for any move. */
  readonly step: number;
  /** What may be added to the design target at least and at most: `lowest` <= 0 <= `highest`. */
  readonly lowest: number;
  readonly highest: number;
  /** Seconds until a new target is reached. */
  readonly delay: number;
}

/** What becomes of the moves that a policy asks for: whole steps, within limits, in force after a delay. */
export class Actuator {
  private readonly rules: ActuatorRules;
  /** Moves under way, the earliest first. */
  private readonly underWay: { readonly from: number; readonly to: number }[] = [];
  private reached = 0;

  constructor(rules: ActuatorRules) {
    this.rules = rules;
  }

  /** Asks for `to` to be added to the target. Times in s, not falling from call to call. */
  ask(to: number, now: number): void {
    this.settle(now);
    this.underWay.push({ from: now + this.rules.delay, to: this.possible(to) });
  }

  /** What is added to the target at `now`. */
  inForce(now: number): number {
    if (this.underWay.length > 0) this.settle(now);
    return this.reached;
  }

  private settle(now: number): void {
    while (this.underWay.length > 0 && this.underWay[0]!.from <= now)
      this.reached = this.underWay.shift()!.to;
  }

  /** The nearest move that can be made: steps are counted from the design target. */
  private possible(to: number): number {
    const { step, lowest, highest } = this.rules;
    const within = Math.min(highest, Math.max(lowest, to));
    if (step === 0) return within;
    const [least, most] = [Math.ceil(lowest / step - ROUNDING), Math.floor(highest / step + ROUNDING)];
    return step * Math.min(most, Math.max(least, Math.round(within / step)));
  }
}
