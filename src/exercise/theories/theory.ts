import type { Scenario } from '../../scenario/scenario.ts';

/** The line is none that the formula holds for; the message says why. */
export class NotOfItsKind extends Error {
  constructor(why: string) {
    super(why);
    this.name = 'NotOfItsKind';
  }
}

/** What theory says of a line. */
export interface Theory {
  /** As an exercise names it. */
  readonly name: string;
  /** The formula in words that a class can follow. */
  readonly says: string;
  readonly source: string;
  /**
   * Expected values by what may be watched, in the units of the engine; null where there is none to expect, such as
   * the queue of a station that cannot keep up.
   * @throws NotOfItsKind
   */
  readonly values: (scenario: Scenario, policy: string) => Readonly<Record<string, number>> | null;
}

/** @throws NotOfItsKind unless it holds */
export function must(holds: boolean, why: string): asserts holds {
  if (!holds) throw new NotOfItsKind(why);
}
