import { LEVEL } from '../../experiment/comparison.ts';
import type { Crossed, CrossedCase } from '../../experiment/crossed.ts';
import type { CrossedRun } from '../../experiment/plan-crossed.ts';
import { MEASURES } from '../../line/measures.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { CROSSED_FORMAT } from '../documents.ts';
import { keyedUnit } from '../keyed-unit.ts';
import { type MadeFrom, type MadeFromDocument, madeFromJson } from '../made-from.ts';

/** A crossed experiment as data. Every number is in the unit that its key names, unrounded; null is no value. */
export interface CrossedDocument extends MadeFromDocument<typeof CROSSED_FORMAT> {
  /** Every policy was run under each of these in every case at every severity. */
  readonly seeds: readonly number[];
  /** Coverage of each mean's interval and of each change's by itself, and of the differences' within a cell together. */
  readonly level: number;
  /** The measure that decides who is best. */
  readonly by: {
    readonly key: string;
    readonly name: string;
    readonly unit: string;
    readonly better: 'higher' | 'lower';
    readonly meaning: string;
  };
  readonly policies: readonly string[];
  readonly severities: readonly number[];
  readonly cases: readonly CaseDocument[];
  readonly runs: readonly RunDocument[];
}

interface CaseDocument {
  readonly case: string;
  readonly cells: readonly CellDocument[];
  /** The best right after the lowest severity, and who comes after whom from which severity on. */
  readonly first: string | null;
  readonly changes: CrossedCase['changes'];
  /** Policies with runs that give no value, which `first` and `changes` leave out. */
  readonly left_out: readonly string[];
}

interface CellDocument {
  readonly severity: number;
  readonly best: string | null;
  /** Not surely worse than the best; empty where it is surely best, null where one run gives no interval. */
  readonly level_with: readonly string[] | null;
  readonly rows: readonly {
    readonly policy: string;
    readonly mean: number | null;
    readonly lower: number | null;
    readonly upper: number | null;
    /** Runs that gave a value. */
    readonly runs: number;
    readonly level: number | null;
    readonly method: string | null;
    /** How much worse than the best, paired by seed. */
    readonly behind: number | null;
    readonly behind_lower: number | null;
    readonly behind_upper: number | null;
    readonly behind_level: number | null;
    readonly behind_method: string | null;
  }[];
}

interface RunDocument {
  readonly case: string;
  readonly severity: number;
  readonly policy: string;
  readonly seed: number;
  readonly measures: Readonly<Record<string, number | null>>;
}

export interface CrossedSource extends MadeFrom {
  readonly crossed: Crossed;
  readonly runs: readonly CrossedRun[];
}

const parts = (estimate: Estimate | null) => ({
  value: estimate?.value ?? null,
  lower: estimate?.lower ?? null,
  upper: estimate?.upper ?? null,
  level: estimate?.level ?? null,
  method: estimate?.method ?? null,
});

const caseDocument = ({ name, cells, first, changes, leftOut }: CrossedCase): CaseDocument => ({
  case: name,
  cells: cells.map(({ severity, best, level, standings }) => ({
    severity,
    best,
    level_with: level,
    rows: standings.map(({ policy, estimate, behind }) => {
      const [mean, less] = [parts(estimate), parts(behind)];
      return {
        ...{ policy, mean: mean.value, lower: mean.lower, upper: mean.upper, runs: estimate?.runs ?? 0 },
        ...{ level: mean.level, method: mean.method },
        ...{ behind: less.value, behind_lower: less.lower, behind_upper: less.upper },
        ...{ behind_level: less.level, behind_method: less.method },
      };
    }),
  })),
  first,
  changes: changes.map(({ from, to, severity, lower, upper }) => ({ from, to, severity, lower, upper })),
  left_out: leftOut,
});

/** The crossed experiment and the runs behind it as a plain object, its keys always in the same order. */
export function crossedJson({ crossed, runs, ...from }: CrossedSource): CrossedDocument {
  const { measure, policies, severities, found } = crossed;
  const { key, name, better, meaning } = measure;
  return {
    ...madeFromJson(CROSSED_FORMAT, from),
    seeds: [...new Set(runs.map(({ outcome }) => outcome.seed))],
    level: LEVEL,
    by: { key, name, unit: keyedUnit(key), better, meaning },
    policies,
    severities,
    cases: found.map(caseDocument),
    runs: runs.map(({ case: of, severity, outcome }) => ({
      ...{ case: of, severity, policy: outcome.policy, seed: outcome.seed },
      measures: Object.fromEntries(MEASURES.map((one) => [one.key, outcome.measures[one.key]])),
    })),
  };
}
