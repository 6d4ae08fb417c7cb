/** One term of a response: its gain, and whose deviations it goes by, as places in a list of deviations. */
interface Linear {
  readonly of: number;
  readonly gain: number;
}

/** On the product of two deviations, or on the square of one. */
interface Quadratic {
  readonly one: number;
  readonly other: number;
  readonly gain: number;
}

/** How a feature follows the settings of a cycle and the thickness of its sheet. */
export class Follows {
  private readonly linear: readonly Linear[];
  private readonly quadratic: readonly Quadratic[];

  constructor(linear: readonly Linear[], quadratic: readonly Quadratic[]) {
    this.linear = linear;
    this.quadratic = quadratic;
  }

  /** What the deviations make of the feature, mm. */
  response(deviations: Float64Array): number {
    let sum = 0;
    for (const { of, gain } of this.linear) sum += gain * deviations[of]!;
    for (const { one, other, gain } of this.quadratic) sum += gain * deviations[one]! * deviations[other]!;
    return sum;
  }
}
