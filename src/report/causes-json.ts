import type { CauseRates } from '../experiment/cause-rates.ts';

/** Why parts were scrapped and did not fit, as data. */
export interface CausesDocument {
  readonly scrap_causes: readonly {
    readonly policy: string;
    readonly station: string;
    readonly cause: string;
    readonly parts: number;
    readonly parts_per_1000_started: number;
  }[];
  readonly misfit_pairs: readonly {
    readonly policy: string;
    readonly station: string;
    readonly hole: string;
    readonly shaft: string;
    readonly tight_per_1000_started: number;
    readonly loose_per_1000_started: number;
  }[];
}

export const causesJson = ({ scrapped, misfits }: CauseRates): CausesDocument => ({
  scrap_causes: scrapped.flatMap(({ station, cause, rows }) =>
    rows.map(({ policy, parts, perThousand }) => ({
      ...{ policy, station, cause, parts },
      parts_per_1000_started: perThousand,
    })),
  ),
  misfit_pairs: misfits.flatMap(({ station, hole, shaft, rows }) =>
    rows.map(({ policy, tight, loose }) => ({
      ...{ policy, station, hole, shaft },
      ...{ tight_per_1000_started: tight, loose_per_1000_started: loose },
    })),
  ),
});
