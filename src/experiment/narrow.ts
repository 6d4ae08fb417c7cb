import type { Measure, MeasureKey } from '../line/measures.ts';
import type { Outcome } from '../line/outcome.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { fixedWidthInterval, fixedWidthTotal } from '../statistics/fixed-width.ts';
import { LEVEL } from './comparison.ts';
import { FailedRunError } from './failed-run.ts';
import { runOf } from './run-words.ts';
import type { Budget } from './selection/budget.ts';

/** How narrow the interval of each policy's mean is to be, each by itself. */
export interface Narrowing {
  /** Names; a bound is not among them. */
  readonly policies: readonly string[];
  readonly measure: Measure & { readonly key: MeasureKey };
  /** Half of its width, in the unit of the measure's key; above 0. */
  readonly half: number;
  /** Seeds from which the spread is told, 2 or more, and the most seeds, no fewer. */
  readonly firstStage: number;
  readonly most: number;
}

/** What was run for it; where the time was over, `most` is what it sufficed for, and so may be `firstStage`. */
export interface Narrowed extends Narrowing {
  readonly seeds: number;
  readonly rows: readonly NarrowedRow[];
}

interface NarrowedRow {
  readonly policy: string;
  /** Seeds that it takes in all, by the spread of the first stage. */
  readonly needed: number;
  /** Without ends where it takes more than there were. */
  readonly estimate: Estimate;
}

/** The least of which a spread can be told; run whatever the time. */
const FEWEST = 2;

/**
 * Asks for seeds until the interval of every policy's mean is as narrow as it is to be, by Stein's rule in two stages. The means of
 * normal values do not depend on their spread, so that one number of seeds for all policies, the largest, leaves each interval
 * valid. The time only ends it.
 * @param upTo does the runs under the seeds up to this one that are not done, and returns all so far
 * @throws FailedRunError where a run gives no value of the measure
 */
export async function untilNarrow(
  narrowing: Narrowing,
  upTo: (seed: number) => Promise<readonly Outcome[]>,
  budget: Budget,
): Promise<Narrowed> {
  const { policies, half } = narrowing;
  let { firstStage, most } = narrowing;
  await upTo(FEWEST);
  const reached = Math.min(firstStage, FEWEST + Math.floor(budget.affordable(FEWEST)));
  if (reached < firstStage) [firstStage, most] = [reached, reached];
  let values = valuesOf(await upTo(firstStage), narrowing);
  const totals = values.map((own) => fixedWidthTotal(own, half, LEVEL));
  const wanted = Math.max(...totals);
  let seeds = firstStage;
  while (seeds < Math.min(wanted, most)) {
    const next = Math.min(firstStage, Math.min(wanted, most) - seeds);
    if (budget.affordable(seeds) < next) most = seeds;
    else {
      seeds += next;
      values = valuesOf(await upTo(seeds), narrowing);
    }
  }
  return {
    ...{ ...narrowing, firstStage, most, seeds },
    rows: policies.map((policy, i) => ({
      ...{ policy, needed: totals[i]! },
      estimate: fixedWidthInterval(values[i]!, totals[i]!, half, LEVEL),
    })),
  };
}

function valuesOf(outcomes: readonly Outcome[], { policies, measure }: Narrowing): number[][] {
  return policies.map((policy) =>
    outcomes
      .filter((outcome) => outcome.policy === policy)
      .map((outcome) => {
        const value = outcome.measures[measure.key];
        if (value !== null) return value;
        const task = { policy, seed: outcome.seed };
        const finished = outcomes.map((own) => ({
          task: { policy: own.policy, seed: own.seed },
          outcome: own,
        }));
        const why = `it gives no value of ${measure.name}, so that its mean has no interval`;
        throw new FailedRunError(runOf(task), outcome.seed, why, finished);
      }),
  );
}
