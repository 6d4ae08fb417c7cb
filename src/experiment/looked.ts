import { edgesOf, type Limits } from '../line/histogram.ts';
import type { Look } from '../line/looks.ts';
import type { Outcome } from '../line/outcome.ts';
import { clearances } from '../scenario/clearances.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** How the true sizes of something lay under each policy, in the same bins. */
export interface Sizes {
  /** A feature, or a station and one of its mating pairs. */
  readonly of: string;
  readonly kind: 'dimension' | 'clearance';
  /** Limits, mm. */
  readonly limits: Limits;
  /** Lower edge of the first bin and the width of each, mm. */
  readonly from: number;
  readonly width: number;
  readonly rows: readonly SizesRow[];
}

interface SizesRow {
  readonly policy: string;
  readonly counted: number;
  /** By bin; what lies beyond all of them is in none. */
  readonly counts: readonly number[];
  readonly below: number;
  readonly above: number;
  /** How many were outside the limits, those beyond the bins included. */
  readonly underLower: number;
  readonly overUpper: number;
}

/** How the level of a stock or a buffer went, mean over the runs. */
export interface Levels {
  readonly name: string;
  readonly kind: 'stock' | 'buffer';
  readonly rows: readonly { readonly policy: string; readonly means: readonly number[] }[];
}

/** What pictures show of the runs that were looked at. */
export interface Looked {
  /** How many seeds they are of. */
  readonly seeds: number;
  readonly sizes: readonly Sizes[];
  /** When the levels were looked at, s since the start of the run. */
  readonly times: readonly number[];
  readonly levels: readonly Levels[];
}

interface OfPolicy {
  readonly policy: string;
  readonly looks: readonly Look[];
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
const added = (all: readonly (readonly number[])[]) => all[0]!.map((_, i) => sum(all.map((own) => own[i]!)));

function sizesOf(
  about: Pick<Sizes, 'of' | 'kind' | 'limits'>,
  all: readonly OfPolicy[],
  countsOf: (look: Look) => readonly number[] | null | undefined,
): Sizes[] {
  const { from, width } = edgesOf(about.limits);
  const rows = all.flatMap(({ policy, looks }): SizesRow[] => {
    const counts = looks.flatMap((look) => {
      const own = countsOf(look);
      return own ? [own] : [];
    });
    if (counts.length === 0) return [];
    const total = added(counts);
    const inner = total.slice(1, -1);
    const [below, above] = [total[0]!, total.at(-1)!];
    const middle = (bin: number) => from + (bin + 0.5) * width;
    const where = (which: (middle: number) => boolean) => sum(inner.filter((_, bin) => which(middle(bin))));
    const { lower, upper } = about.limits;
    return [
      {
        ...{ policy, counted: sum(total), counts: inner, below, above },
        underLower: below + where((at) => at < lower),
        overUpper: above + where((at) => at > upper),
      },
    ];
  });
  return rows.some(({ counted }) => counted > 0) ? [{ ...about, from, width, rows }] : [];
}

function levelsOf(kind: Levels['kind'], all: readonly OfPolicy[]): Levels[] {
  const of = ({ stocks, buffers }: Look) => (kind === 'stock' ? stocks : buffers);
  return Object.keys(of(all[0]!.looks[0]!)).map((name) => ({
    ...{ name, kind },
    rows: all.map(({ policy, looks }) => ({
      policy,
      means: added(looks.map((look) => of(look)[name]!)).map((level) => level / looks.length),
    })),
  }));
}

/**
 * Adds up what was looked at; null where nothing was.
 * @param policies names in the scenario's order
 */
export function lookedAt(
  scenario: Scenario,
  policies: readonly string[],
  outcomes: readonly Outcome[],
): Looked | null {
  const all = policies.map((policy) => ({
    policy,
    looks: outcomes.flatMap((outcome) => (outcome.policy === policy ? (outcome.look ?? []) : [])),
  }));
  const first = all[0]?.looks[0];
  if (first === undefined || all.some(({ looks }) => looks.length === 0)) return null;
  const features = scenario.parts
    .flatMap((part) => part.features)
    .flatMap(({ name, limits }) =>
      limits === null || limits.upper <= limits.lower
        ? []
        : sizesOf({ of: name, kind: 'dimension', limits }, all, (look) => look.features[name]),
    );
  const fits = scenario.stations.flatMap((spec) =>
    spec.does !== 'assemble'
      ? []
      : spec.fits.flatMap((pair, i) => {
          const { least, most } = clearances(pair, scenario);
          if (most <= least) return [];
          const about = {
            of: `${spec.name}: ${pair.hole} on ${pair.shaft}`,
            kind: 'clearance' as const,
            limits: { lower: least, upper: most },
          };
          return sizesOf(about, all, (look) => look.fits[spec.name]?.[i]);
        }),
  );
  const levels = [...levelsOf('stock', all), ...levelsOf('buffer', all)];
  const points = levels[0]?.rows[0]?.means.length ?? 0;
  return {
    seeds: all[0]!.looks.length,
    sizes: [...features, ...fits],
    times: Array.from({ length: points }, (_, i) => scenario.run.warmUp + i * first.every),
    levels,
  };
}
