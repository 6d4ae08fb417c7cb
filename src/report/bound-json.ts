import type { Recovered } from '../experiment/recovered.ts';
import { type MeanDocument, meanJson } from './estimate-json.ts';

/** A bound as data: a policy that knows what no line can know, for reference. */
export interface BoundDocument {
  readonly policy: string;
  /** What it makes beyond the baseline under the same seed; null where only the bound was run. */
  readonly recoverable_per_h: MeanDocument | null;
  /** Share of that which each policy makes beyond the baseline; null where there is nothing to recover. */
  readonly recovered: readonly ({ readonly policy: string } & MeanDocument)[] | null;
}

export function boundJson(policy: string, recovered?: Recovered): BoundDocument {
  return {
    policy,
    recoverable_per_h: recovered ? meanJson(recovered.recoverable) : null,
    recovered: recovered?.shares?.map(({ policy, share }) => ({ policy, ...meanJson(share) })) ?? null,
  };
}
