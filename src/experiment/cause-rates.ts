import type { Outcome } from '../line/outcome.ts';
import { SCRAP_CAUSES, type ScrapCause } from '../line/scrap-causes.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Parts that a policy scrapped at one station for one cause. */
interface ScrapRow {
  readonly policy: string;
  /** In all its runs, and for each 1000 parts that these started. */
  readonly parts: number;
  readonly perThousand: number;
}

export interface ScrapRates {
  readonly station: string;
  readonly cause: ScrapCause;
  /** One a policy, in their order. */
  readonly rows: readonly ScrapRow[];
}

/** Attempts to assemble that one mating pair decided, for each 1000 parts started. */
export interface MisfitRates {
  readonly station: string;
  readonly hole: string;
  readonly shaft: string;
  readonly rows: readonly {
    readonly policy: string;
    readonly tight: number;
    readonly loose: number;
  }[];
}

/** Why parts were scrapped and did not fit, over all runs together. */
export interface CauseRates {
  /** Station by station, without what no policy met. */
  readonly scrapped: readonly ScrapRates[];
  readonly misfits: readonly MisfitRates[];
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
const THOUSAND = 1000;

/**
 * Adds up what the runs counted. Ratios are of totals: a run with more parts counts more.
 * @param policies names in the scenario's order
 */
export function causeRates(
  { stations }: Pick<Scenario, 'stations'>,
  policies: readonly string[],
  outcomes: readonly Outcome[],
): CauseRates {
  const own = policies.map((policy) => outcomes.filter((outcome) => outcome.policy === policy));
  const started = own.map((runs) => sum(runs.map(({ counts }) => counts.started - counts.turnedAway)));
  const rate = (parts: number, p: number) => (started[p]! > 0 ? (parts / started[p]!) * THOUSAND : 0);
  const scrapped = stations.flatMap(({ name: station }) =>
    SCRAP_CAUSES.map((cause): ScrapRates => {
      const rows = own.map((runs, p) => {
        const found = runs.flatMap(({ causes }) =>
          causes.scrapped.filter((it) => it.station === station && it.cause === cause),
        );
        const parts = sum(found.map((it) => it.parts));
        return { policy: policies[p]!, parts, perThousand: rate(parts, p) };
      });
      return { station, cause, rows };
    }),
  );
  const misfits = stations.flatMap((spec) =>
    spec.does !== 'assemble'
      ? []
      : spec.fits.map(({ hole, shaft }, pair): MisfitRates => {
          const rows = own.map((runs, p) => {
            const found = runs.flatMap(({ causes }) =>
              causes.misfits.filter((it) => it.station === spec.name && it.pair === pair),
            );
            return {
              policy: policies[p]!,
              tight: rate(sum(found.map(({ tight }) => tight)), p),
              loose: rate(sum(found.map(({ loose }) => loose)), p),
            };
          });
          return { station: spec.name, hole, shaft, rows };
        }),
  );
  return {
    scrapped: scrapped.filter(({ rows }) => rows.some(({ parts }) => parts > 0)),
    misfits: misfits.filter(({ rows }) => rows.some(({ tight, loose }) => tight + loose > 0)),
  };
}
