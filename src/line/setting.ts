/** A change of a setting that nobody asked for; it builds up over `ramp` seconds. */
export interface Upset {
  readonly begun: number;
  readonly by: number;
  readonly ramp: number;
}

/** A forming setting: how far the actual value lies from the target the features were designed for. */
export class Setting {
  readonly name: string;
  /** What a policy has added to the target. */
  adjusted = 0;
  readonly upsets = new Set<Upset>();

  constructor(name: string) {
    this.name = name;
  }

  /** Actual minus design value at `now`, without the variation from cycle to cycle. */
  deviation(now: number): number {
    let sum = this.adjusted;
    for (const { begun, by, ramp } of this.upsets)
      sum += by * (ramp > 0 ? Math.min(1, (now - begun) / ramp) : 1);
    return sum;
  }
}
