import type { Pilot } from '../experiment/pilot.ts';
import type { WarmUpBy } from '../scenario/warm-up.ts';

/** How the warm-up was chosen, and the pilot it is shown on. */
export interface WarmUpDocument {
  readonly by: WarmUpBy;
  readonly length_s: number;
  readonly pilot: {
    readonly policy: string;
    readonly runs: number;
    readonly length_s: number;
    readonly batch_s: number;
    readonly settled_s: number | null;
    readonly good_per_h: readonly number[];
  };
}

export const warmUpJson = ({
  by,
  warmUp,
  policy,
  runs,
  length,
  batch,
  settled,
  rates,
}: Pilot): WarmUpDocument => ({
  by,
  length_s: warmUp,
  pilot: { policy, runs, length_s: length, batch_s: batch, settled_s: settled, good_per_h: rates },
});
