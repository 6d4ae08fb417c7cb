import { LEVEL } from '../../experiment/comparison.ts';
import type { FactorEffect } from '../../experiment/varied/effects.ts';
import type { VariedRun } from '../../experiment/varied/plan-varied.ts';
import type { Varied } from '../../experiment/varied/varied.ts';
import { MEASURES } from '../../line/measures.ts';
import type { Raw } from '../../scenario/raw.ts';
import { VARIED_FORMAT } from '../documents.ts';
import { type EstimateDocument, estimateJson } from '../estimate-json.ts';
import { keyedUnit } from '../keyed-unit.ts';
import { type MadeFrom, type MadeFromDocument, madeFromJson } from '../made-from.ts';

/** Things varied by their names, with the value of each where the effect is of that value. */
interface TogetherDocument {
  readonly of: readonly string[];
  readonly at?: readonly Raw[];
}

interface EffectDocument extends TogetherDocument {
  /** What this design cannot tell from it, with the sign it comes in with. */
  readonly mixed_with: readonly (TogetherDocument & { readonly sign: number })[];
  readonly effect: EstimateDocument;
}

interface ScreenedDocument {
  readonly of: string;
  readonly size: EstimateDocument;
  readonly effect: EstimateDocument;
  readonly spread: number | null;
  readonly matters: boolean | null;
}

/** A varied experiment as data. Every number is in the unit that its key names, unrounded; null is no value. */
interface VariedDocument extends MadeFromDocument<typeof VARIED_FORMAT> {
  readonly design: string;
  /** Fewest in a product that is the same at all settings of a fraction; null elsewhere. */
  readonly resolution: number | null;
  /** Runs at each setting. */
  readonly seeds: number;
  readonly level: number;
  readonly by: {
    readonly key: string;
    readonly name: string;
    readonly unit: string;
    readonly better: 'higher' | 'lower';
    readonly meaning: string;
  };
  /** What was followed; null where the policy was varied. */
  readonly policy: string | null;
  readonly varied: readonly {
    readonly at: string | null;
    readonly name: string;
    readonly values: readonly Raw[];
  }[];
  /** Of which kind the effects are; see the README. */
  readonly effects_are: string;
  /** Share of how the means differ that a plane accounts for, where effects are linear. */
  readonly explained: number | null;
  readonly effects: readonly (EffectDocument | ScreenedDocument)[];
  /** Numbered from 1; the values in the order of `varied`. */
  readonly settings: readonly {
    readonly setting: number;
    readonly values: readonly Raw[];
    readonly mean: EstimateDocument | null;
  }[];
  /** Number of the setting with the best mean. */
  readonly best: number | null;
  readonly runs: readonly {
    readonly setting: number;
    readonly policy: string;
    readonly seed: number;
    readonly measures: Readonly<Record<string, number | null>>;
  }[];
}

export interface VariedSource extends MadeFrom {
  readonly varied: Varied;
  readonly runs: readonly VariedRun[];
}

function effectJson(
  { factors }: Varied,
  { factors: of, levels, mixedWith, effect }: FactorEffect,
): EffectDocument {
  const at = levels?.map((level, i) => factors[of[i]!]!.levels[level]!.is);
  const named = (numbers: readonly number[]) => numbers.map((i) => factors[i]!.name);
  return {
    of: named(of),
    ...(at && { at }),
    mixed_with: mixedWith.map((other) => ({ of: named(other.factors), sign: other.sign })),
    effect: estimateJson(effect),
  };
}

function effectsJson(varied: Varied): VariedDocument['effects'] {
  const { effects } = varied;
  if (effects.kind === 'none') return [];
  if (effects.kind !== 'screened') return effects.rows.map((row) => effectJson(varied, row));
  return effects.rows.map(({ size, mean, spread, matters }, i) => ({
    ...{ of: varied.factors[i]!.name, size: estimateJson(size), effect: estimateJson(mean), spread, matters },
  }));
}

/** The varied experiment and the runs behind it as a plain object, its keys always in the same order. */
export function variedJson({ varied, runs, ...from }: VariedSource): VariedDocument {
  const { design, measure, key, factors, effects } = varied;
  const { name, better, meaning } = measure;
  return {
    ...madeFromJson(VARIED_FORMAT, from),
    design: design.kind,
    resolution: design.fraction?.resolution ?? null,
    seeds: varied.seeds,
    level: LEVEL,
    by: { key, name, unit: keyedUnit(key), better, meaning },
    policy: varied.policy,
    varied: factors.map(({ at, name: called, levels }) => ({
      ...{ at, name: called, values: levels.map(({ is }) => is) },
    })),
    effects_are: effects.kind,
    explained: effects.kind === 'linear' ? effects.explained : null,
    effects: effectsJson(varied),
    settings: design.points.map((point, i) => {
      const estimate = varied.estimates[i]!;
      return { setting: i + 1, values: point.map(({ is }) => is), mean: estimate && estimateJson(estimate) };
    }),
    best: varied.best === null ? null : varied.best + 1,
    runs: runs.map(({ point, outcome: { policy, seed, measures } }) => ({
      ...{ setting: point + 1, policy, seed },
      measures: Object.fromEntries(MEASURES.map((one) => [one.key, measures[one.key]])),
    })),
  };
}
