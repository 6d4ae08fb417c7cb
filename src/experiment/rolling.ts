import type { Scenario } from '../scenario/scenario.ts';

/** A rolling window is so many bins long: its ends are known to a tenth of it. */
export const BINS_A_WINDOW = 10;
/** Where the scenario does not say how long it is, the counted time holds so many windows. */
const WINDOWS = 30;

export interface Rolling {
  /** Length of the rolling window, s. */
  readonly window: number;
  /** Width of a bin, s. */
  readonly bin: number;
  /** How many whole bins the counted time holds; what is left at its end is in none. */
  readonly bins: number;
}

/** How the course of a run is counted. */
export function rollingOf({ length, rolling }: Scenario['run']): Rolling {
  const window = rolling ?? length / WINDOWS;
  const bin = window / BINS_A_WINDOW;
  return { window, bin, bins: Math.floor(length / bin + 1e-9) };
}
