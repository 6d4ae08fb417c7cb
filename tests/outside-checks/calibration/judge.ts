import type { Estimate } from '../../../src/statistics/estimate.ts';
import { wilsonProportion } from '../../../src/statistics/proportion-interval.ts';
import type { Calibration } from './calibration.ts';

/** Between these an interval of 95 % is to cover. */
export const COVERED = [0.935, 0.965] as const;
/** No more often is one of several things to be said wrongly, where 5 % is stated. */
export const WRONG = 0.055;

/** What the experiments say of a case. */
export interface Judgement {
  /** The share of experiments in which what is counted came about, with its interval at 95 %. */
  readonly share: Estimate;
  readonly passed: boolean;
}

/**
 * Judges how often what is counted came about. A share that is to be at least what is stated passes unless its whole interval lies
 * below: some of the methods hold it exactly, and then half of all shares lie below by chance.
 * @param slack standard errors of the share that are granted beyond that, for few experiments
 */
export function judge({ claim, stated }: Calibration, hits: number, tries: number, slack = 0): Judgement {
  const share = wilsonProportion(hits, tries, 0.95);
  const granted = (chance: number) => slack * Math.sqrt((chance * (1 - chance)) / tries);
  const [least, most] = COVERED;
  const passed = {
    covers: share.value >= least - granted(least) && share.value <= most + granted(most),
    'at least': share.upper! >= stated - granted(stated),
    'at most': share.value <= WRONG + granted(WRONG),
  }[claim];
  return { share, passed };
}
