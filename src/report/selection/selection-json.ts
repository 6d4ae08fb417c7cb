import { LEVEL } from '../../experiment/comparison.ts';
import type { Selection } from '../../experiment/selection/select.ts';
import type { ProcedureName } from '../../experiment/selection/settings.ts';
import type { How } from '../../experiment/selection/standing.ts';
import { MEASURES } from '../../line/measures.ts';
import { keyedUnit } from '../keyed-unit.ts';
import { type MadeFrom, type MadeFromDocument, madeFromJson } from '../made-from.ts';
import { besideOf, rowsOf, type SelectionRow } from './selection-words.ts';

/** Changes its number when a reader of the older form would go wrong. */
export const SELECTION_FORMAT = 'mendline selection 1';

/** A choice of the best policy as data. Every number is in the unit that its key or `by` names, unrounded; null is no value. */
export interface SelectionDocument extends MadeFromDocument<typeof SELECTION_FORMAT> {
  readonly by: {
    readonly key: string;
    readonly name: string;
    readonly unit: string;
    readonly better: 'higher' | 'lower';
    readonly meaning: string;
  };
  readonly procedure: ProcedureName;
  readonly worth: number;
  readonly probability: number;
  readonly first_stage: number;
  readonly at_most: number;
  readonly ended: How;
  readonly chosen: string | null;
  readonly ahead: string;
  readonly needed: number | null;
  readonly policies: readonly string[];
  readonly level: number;
  readonly rows: readonly RowDocument[];
  readonly left_out: readonly {
    readonly policy: string;
    readonly runs: number;
    readonly by: string;
    readonly behind: number;
    readonly allowed: number;
  }[];
  readonly runs: readonly {
    readonly policy: string;
    readonly seed: number;
    readonly measures: Readonly<Record<string, number | null>>;
  }[];
  readonly csv_sha256: Readonly<Record<string, string>>;
}

interface RowDocument {
  readonly policy: string;
  readonly standing: SelectionRow['standing'];
  readonly runs: number;
  readonly mean: number;
  readonly behind: number | null;
  readonly first_mean: number;
  readonly first_lower: number | null;
  readonly first_upper: number | null;
  readonly beside: number | null;
  readonly beside_lower: number | null;
  readonly beside_upper: number | null;
}

/** Where a choice comes from. */
export interface SelectionSource extends MadeFrom {
  readonly csvSha256: Readonly<Record<string, string>>;
}

/** The choice and the runs behind it as a plain object, its keys always in the same order. */
export function selectionJson(
  selection: Selection,
  { csvSha256, ...from }: SelectionSource,
): SelectionDocument {
  const { policies, measure, settings, standing, outcomes } = selection;
  const { key, name, better, meaning } = measure;
  const best = policies[standing.best!]!;
  const beside = besideOf(selection);
  return {
    ...madeFromJson(SELECTION_FORMAT, from),
    by: { key, name, unit: keyedUnit(key), better, meaning },
    ...{ procedure: settings.procedure, worth: settings.worth, probability: settings.confidence },
    ...{ first_stage: settings.firstStage, at_most: settings.most, ended: standing.how! },
    ...{ chosen: standing.how === 'most runs' ? null : best, ahead: best, needed: standing.needed },
    ...{ policies, level: LEVEL },
    rows: rowsOf(selection).map(({ policy, standing, runs, mean, behind, first }, i) => ({
      ...{ policy, standing, runs, mean, behind, first_mean: first.value },
      ...{ first_lower: first.lower, first_upper: first.upper },
      beside: beside[i]?.value ?? null,
      beside_lower: beside[i]?.lower ?? null,
      beside_upper: beside[i]?.upper ?? null,
    })),
    left_out: standing.out.map(({ policy, runs, by, behind, allowed }) => ({
      ...{ policy: policies[policy]!, runs, by: policies[by]!, behind, allowed },
    })),
    runs: outcomes.map(({ policy, seed, measures }) => ({
      ...{ policy, seed },
      measures: Object.fromEntries(MEASURES.map((one) => [one.key, measures[one.key]])),
    })),
    csv_sha256: csvSha256,
  };
}
