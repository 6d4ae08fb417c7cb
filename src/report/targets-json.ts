import type { TargetFound } from '../experiment/targets.ts';
import { type EstimateDocument, estimateJson } from './estimate-json.ts';
import { keyedUnit } from './keyed-unit.ts';

/** A target as data, with how often each policy met it. */
export interface TargetDocument {
  readonly key: string;
  readonly name: string;
  /** Unit of the limit. */
  readonly unit: string;
  /** Which of the two the limit is. */
  readonly at: 'least' | 'most';
  readonly limit: number;
  readonly rows: readonly {
    readonly policy: string;
    readonly met: number;
    /** Runs that gave no value, which count as not met. */
    readonly without_value: number;
    /** Of all runs. */
    readonly share: EstimateDocument;
  }[];
}

export const targetsJson = (targets: readonly TargetFound[]): TargetDocument[] =>
  targets.map(({ measure: { key, name, better }, limit, rows }) => ({
    ...{ key, name, unit: keyedUnit(key), at: better === 'higher' ? 'least' : 'most', limit },
    rows: rows.map(({ policy, met, without, share }) => ({
      ...{ policy, met, without_value: without, share: estimateJson(share) },
    })),
  }));
