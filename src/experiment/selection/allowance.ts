import { sampleVariance } from 'simple-statistics';
import { continuation, kimNelsonConstants, lastStage } from '../../statistics/selection/kim-nelson.ts';
import type { SelectionSettings } from './settings.ts';
import type { Values } from './standing.ts';

/** How far one policy may lie behind another and stay, by the spread of their differences in the first stage. */
export interface Allowance {
  /** After so many runs, in the unit of the measure's key. */
  readonly after: (runs: number) => number;
  /** The last number of runs after which both may be left. */
  readonly last: number;
}

export function allowanceOf(
  values: Values,
  { worth, confidence, firstStage }: SelectionSettings,
): (one: number, other: number) => Allowance {
  const { square } = kimNelsonConstants(values.length, firstStage, confidence);
  return (one, other) => {
    const first = values[one]!.slice(0, firstStage);
    const variance = sampleVariance(first.map((value, run) => value - values[other]![run]!));
    return {
      after: (runs) => continuation(square, variance, worth, runs),
      last: lastStage(square, variance, worth),
    };
  };
}
