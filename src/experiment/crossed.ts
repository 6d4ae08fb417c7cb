import { MEASURES, type Measure, type MeasureKey } from '../line/measures.ts';
import { crossingInterval } from '../statistics/crossing.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { leadersOf } from '../statistics/leaders.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { LEVEL } from './comparison.ts';
import type { CrossedRun, Crossing } from './plan-crossed.ts';

/** One policy in one case at one severity. */
interface Standing {
  readonly policy: string;
  /** Null where no run gives a value. Its interval holds by itself at LEVEL. */
  readonly estimate: Estimate | null;
  /** How much worse than the best, paired by seed; null for the best itself, and where no seed gives both. */
  readonly behind: Estimate | null;
}

/** All policies in one case at one severity, under the same seeds. */
export interface Cell {
  readonly severity: number;
  /** In the order of the policies. */
  readonly standings: readonly Standing[];
  /** The best by its mean, of several that are equal who leads right after; null where no run gives a value. */
  readonly best: string | null;
  /**
   * Policies that are not surely worse than the best. Where there are none, the best is surely best: at LEVEL the
   * intervals of all that it is ahead by hold together, by Bonferroni's inequality. Null where one run gives no
   * interval.
   */
  readonly level: readonly string[] | null;
}

/** One policy comes before another up to a severity, and after it from there on. */
interface Change {
  readonly from: string;
  readonly to: string;
  readonly severity: number;
  /** Ends of the interval, which holds by itself at LEVEL; null where it is open, or where one run gives none. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/** One case of disturbances over all severities. */
export interface CrossedCase {
  readonly name: string;
  readonly cells: readonly Cell[];
  /** Who is best where, in rising order of severity; null where no policy gives a value in every run. */
  readonly first: string | null;
  readonly changes: readonly Change[];
  /** Policies with runs that give no value, which `first` and `changes` leave out. */
  readonly leftOut: readonly string[];
}

/** What a crossed experiment says by one measure. */
export interface Crossed extends Crossing {
  readonly measure: Measure;
  readonly key: MeasureKey;
  readonly seeds: number;
  /** How many runs there were: those of severity 0 are the same in all cases. */
  readonly runs: number;
  readonly found: readonly CrossedCase[];
}

/** Values of one policy in one case at one severity, in order of seed; null where the run gives none. */
type Values = readonly (number | null)[];

const given = (values: Values): number[] => values.filter((value) => value !== null);
const complete = (values: Values) => values.length > 0 && values.every((value) => value !== null);

/** By how much `best` is better than `other`, seed by seed. */
function leads(best: Values, other: Values, better: Measure['better']): number[] {
  const sign = better === 'higher' ? 1 : -1;
  return best.flatMap((value, i) => {
    const against = other[i] ?? null;
    return value === null || against === null ? [] : [sign * (value - against)];
  });
}

function cellOf(
  severity: number,
  policies: readonly string[],
  values: readonly Values[],
  of: Measure,
  /** Who is named of several that are equal, if it is among them. */
  leader: string | null,
): Cell {
  const estimates = values.map((own) => (given(own).length > 0 ? meanInterval(given(own), LEVEL) : null));
  const sign = of.better === 'higher' ? 1 : -1;
  const goodness = estimates.map((own) => (own ? sign * own.value : Number.NEGATIVE_INFINITY));
  const top = Math.max(...goodness);
  const equal = policies.findIndex((policy, i) => policy === leader && goodness[i] === top);
  const best = top === Number.NEGATIVE_INFINITY ? null : equal >= 0 ? equal : goodness.indexOf(top);
  // The best is chosen by the same runs. Saying of some other that it is surely best takes one of so many intervals
  // to miss, that of the truly best, so that these together cover the choice as well.
  const comparisons = policies.length - 1;
  const standings = policies.map((policy, i): Standing => {
    const ahead = best === null || i === best ? [] : leads(values[best]!, values[i]!, of.better);
    const behind = ahead.length > 0 ? meanInterval(ahead, LEVEL, comparisons) : null;
    return { policy, estimate: estimates[i]!, behind };
  });
  const told = standings.filter(({ estimate }, i) => estimate !== null && i !== best);
  const unsure = told.some(({ behind }) => behind === null || behind.lower === null);
  const level = told.filter(({ behind }) => behind!.lower! <= 0).map(({ policy }) => policy);
  return {
    severity,
    standings,
    best: best === null ? null : policies[best]!,
    level: best === null || unsure ? null : level,
  };
}

function changesOf(
  { severities, policies }: Crossing,
  /** By severity and policy. */
  values: readonly (readonly Values[])[],
  better: Measure['better'],
): Pick<CrossedCase, 'first' | 'changes' | 'leftOut'> {
  const kept = policies.map((_, i) => i).filter((i) => values.every((at) => complete(at[i]!)));
  const leftOut = policies.filter((_, i) => !kept.includes(i));
  if (kept.length === 0) return { first: null, changes: [], leftOut };
  const sign = better === 'higher' ? 1 : -1;
  const means = kept.map((i) =>
    values.map((at) => (sign * given(at[i]!).reduce((sum, value) => sum + value, 0)) / at[i]!.length),
  );
  const leaders = leadersOf(severities, means);
  const changes = leaders.slice(1).map(({ who, from }, n): Change => {
    const [one, other] = [kept[leaders[n]!.who]!, kept[who]!];
    const differences = values.map((at, k) => ({
      level: severities[k]!,
      differences: leads(at[one]!, at[other]!, better),
    }));
    const { lower, upper } = crossingInterval(differences, from, LEVEL);
    return { from: policies[one]!, to: policies[other]!, severity: from, lower, upper };
  });
  return { first: policies[kept[leaders[0]!.who]!]!, changes, leftOut };
}

/**
 * Says who is best in which case at which severity, and where that changes. Between the severities tried the value
 * of each run is taken as linear.
 * @param runs every policy in every case at every severity under the same seeds, in order of seed
 */
export function crossed(crossing: Crossing, runs: readonly CrossedRun[], key: MeasureKey): Crossed {
  const measure: Measure = MEASURES.find((one) => one.key === key)!;
  const { cases, severities, policies } = crossing;
  const found = cases.map((name): CrossedCase => {
    const own = runs.filter((run) => run.case === name);
    const values = severities.map((severity) =>
      policies.map((policy) =>
        own
          .filter((run) => run.severity === severity && run.outcome.policy === policy)
          .map(({ outcome }): number | null => outcome.measures[key]),
      ),
    );
    const told = changesOf(crossing, values, measure.better);
    const leaderAt = (at: number) =>
      told.changes.findLast(({ severity }) => severity <= at)?.to ?? told.first;
    const cells = severities.map((severity, k) =>
      cellOf(severity, policies, values[k]!, measure, leaderAt(severity)),
    );
    return { name, cells, ...told };
  });
  return {
    ...crossing,
    ...{ measure, key, found },
    seeds: new Set(runs.map(({ outcome }) => outcome.seed)).size,
    runs: new Set(runs.map(({ outcome }) => outcome)).size,
  };
}
