import type { Measure, MeasureKey } from '../../line/measures.ts';
import type { Outcome } from '../../line/outcome.ts';
import { FailedRunError } from '../failed-run.ts';
import { runOf } from '../run-words.ts';
import type { Task } from '../worker.ts';
import type { Budget } from './budget.ts';
import { sequential } from './sequential.ts';
import type { SelectionSettings } from './settings.ts';
import type { Standing, Values } from './standing.ts';
import { twoStage } from './two-stage.ts';

type Judged = Measure & { readonly key: MeasureKey };

/** What is to be chosen, and how. */
export interface Choice {
  /** Names in the scenario's order, 2 or more. */
  readonly policies: readonly string[];
  readonly measure: Judged;
  readonly settings: SelectionSettings;
}

/** A choice that has ended. */
export interface Selection extends Choice {
  /** As they were in the end: where the time was over, `most` is what it sufficed for, and so may be `firstStage`. */
  readonly settings: SelectionSettings;
  readonly standing: Standing;
  /** Of the runs that counted. */
  readonly values: Values;
  /** The runs that counted, seed by seed. */
  readonly outcomes: readonly Outcome[];
}

const standingOf = { sequential, 'two-stage': twoStage } as const;

/** The least of which a spread can be told; run whatever the time. */
const FEWEST = 2;

/**
 * Runs policies under the same seeds until one is chosen, the most runs are reached or the time is over. Which runs are
 * asked for, and in which order, follows from the outcomes alone, so that it is the same on any number of workers and when
 * it goes on from a journal; the time only ends it.
 * @param run does runs and returns their outcomes in the same order
 * @throws FailedRunError where a run gives no value of the measure
 */
export async function select(
  { policies, measure, settings: wanted }: Choice,
  run: (tasks: readonly Task[]) => Promise<readonly Outcome[]>,
  budget: Budget,
): Promise<Selection> {
  const done: Outcome[][] = policies.map(() => []);
  const values: number[][] = policies.map(() => []);
  let settings = wanted;
  const count = () => values.reduce((sum, own) => sum + own.length, 0);
  const ask = async (who: readonly number[], seeds: number) => {
    const from = values[who[0]!]!.length;
    const asked = Array.from({ length: seeds }, (_, k) => who.map((i) => ({ i, seed: from + k + 1 }))).flat();
    const tasks = asked.map(({ i, seed }): Task => ({ policy: policies[i]!, seed }));
    const outcomes = await run(tasks);
    asked.forEach(({ i }, at) => {
      done[i]!.push(outcomes[at]!);
      values[i]!.push(measured(outcomes[at]!, measure, tasks[at]!, done));
    });
  };

  const all = policies.map((_, i) => i);
  await ask(all, FEWEST);
  const further = Math.min(
    settings.firstStage - FEWEST,
    Math.floor(budget.affordable(count()) / policies.length),
  );
  if (further > 0) await ask(all, further);
  const reached = FEWEST + further;
  // A shorter first stage is as sound as any, since how long a run takes does not tell what comes of it.
  if (reached < settings.firstStage) settings = { ...settings, firstStage: reached, most: reached };

  for (;;) {
    const standing = standingOf[settings.procedure](values, settings);
    if (standing.how !== null) return selectionOf({ policies, measure, settings }, standing, done);
    const { left, runs } = standing;
    const seeds = Math.min(batchOf(standing, settings), settings.most - runs);
    if (budget.affordable(count()) >= seeds * left.length) await ask(left, seeds);
    else settings = { ...settings, most: runs };
  }
}

/**
 * How many runs of each policy are asked for at once. One by one would leave most workers idle; a tenth of those done costs no
 * more than that in runs which turn out not to be needed.
 */
function batchOf({ runs, needed }: Standing, { procedure, firstStage }: SelectionSettings): number {
  return procedure === 'sequential'
    ? Math.max(1, Math.floor(runs / 10))
    : Math.min(firstStage, needed! - runs);
}

function measured(outcome: Outcome, { key, name }: Judged, task: Task, done: readonly Outcome[][]): number {
  const value = outcome.measures[key];
  if (value !== null) return value;
  const finished = done.flat().map((own) => ({ task: { policy: own.policy, seed: own.seed }, outcome: own }));
  const why = `it gives no value of ${name}, so that no policy can be chosen by it`;
  throw new FailedRunError(runOf(task), task.seed, why, finished);
}

/** Without the runs that were asked for and turned out not to be needed. */
function selectionOf(choice: Choice, standing: Standing, done: readonly Outcome[][]): Selection {
  const counted = choice.policies.map(
    (_, i) => standing.out.find(({ policy }) => policy === i)?.runs ?? standing.runs,
  );
  const kept = done.map((own, i) => own.slice(0, counted[i]));
  const { key } = choice.measure;
  return {
    ...choice,
    standing,
    values: kept.map((own) => own.map(({ measures }) => measures[key]!)),
    outcomes: Array.from({ length: standing.runs }, (_, run) => kept.flatMap((own) => own[run] ?? [])).flat(),
  };
}
