import { type Criterion, type Decision, decide } from './decision.ts';
import { chanceOfNone, holm } from './holm.ts';

/** What is said of one system against another. */
export interface Pair {
  readonly one: number;
  readonly other: number;
  /** By the paired differences of `one` less `other`; holds together with those of all pairs by Bonferroni's inequality. */
  readonly decision: Decision;
  /** The chance of such a difference were there none, adjusted after Holm for all pairs. */
  readonly chance: number;
}

/** Each of `systems` but the first against the first. */
export const againstFirst = (systems: number): [number, number][] =>
  Array.from({ length: systems - 1 }, (_, i) => [i + 1, 0]);

/** Each of `systems` against each one before it. */
export const allPairs = (systems: number): [number, number][] =>
  Array.from({ length: systems }, (_, one) =>
    Array.from({ length: one }, (_, other): [number, number] => [one, other]),
  ).flat();

/**
 * Decides pairs of systems that ran under the same seeds.
 * @param values by system and run, the runs of all systems by the same seeds in the same order
 * @throws RangeError for systems with unequal numbers of runs
 */
export function decidePairs(
  values: readonly (readonly number[])[],
  pairs: readonly (readonly [number, number])[],
  criterion: Omit<Criterion, 'comparisons'>,
): Pair[] {
  if (values.some((own) => own.length !== values[0]!.length))
    throw new RangeError('systems are compared in pairs of runs, so all need equally many');
  const differences = pairs.map(([one, other]) => values[one]!.map((x, run) => x - values[other]![run]!));
  const chances = holm(differences.map(chanceOfNone));
  return pairs.map(([one, other], i) => ({
    one,
    other,
    decision: decide(differences[i]!, { ...criterion, comparisons: pairs.length }),
    chance: chances[i]!,
  }));
}
