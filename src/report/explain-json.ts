import type { Explanation } from '../experiment/explanation.ts';
import type { Compared } from '../experiment/judge.ts';
import type { Contribution } from '../line/prediction/model.ts';

export interface ExplainSource {
  readonly explanation: Explanation;
  readonly file: string;
  readonly title: string;
  readonly sha256: string;
}

const value = (compared: Compared | null) =>
  compared && {
    predicted: compared.predicted,
    simulated: compared.simulated?.value ?? null,
    lower: compared.simulated?.lower ?? null,
    upper: compared.simulated?.upper ?? null,
    runs: compared.simulated?.runs ?? 0,
    differs: compared.differs,
  };

const variance = (from: readonly Contribution[]) =>
  from.map(({ name, variance }) => ({ from: name, variance_mm2: variance }));

/** Numbers are in the unit that their key names, shares from 0 to 1; null is no value, or one without bound. */
export function explainJson({ explanation, file, title, sha256 }: ExplainSource): object {
  const { seeds, shown, deciding, comparisons, features, assemblies, gauges, readers } = explanation;
  return {
    format: 'mendline explain 1',
    scenario: { file, title, sha256 },
    seeds: Array.from({ length: seeds }, (_, i) => i + 1),
    level: shown,
    deciding_level: deciding,
    comparisons,
    features: features.map(({ spec, mean, sd, outside, pp, ppk, from }) => ({
      feature: spec.name,
      made_at: spec.madeAt,
      aim_mm: spec.aim,
      lower_mm: spec.limits?.lower ?? null,
      upper_mm: spec.limits?.upper ?? null,
      mean_mm: value(mean),
      sd_mm: value(sd),
      outside_share: value(outside),
      pp,
      ppk,
      variance: variance(from),
    })),
    assemblies: assemblies.map(({ station, pairs, all }) => ({
      station,
      pairs: pairs.map((pair) => ({
        hole: pair.hole,
        shaft: pair.shaft,
        least_mm: pair.least,
        most_mm: pair.most,
        clearance_mm: value(pair.clearance),
        sd_mm: value(pair.sd),
        fit_share: value(pair.fits),
        tight_share: value(pair.tight),
        loose_share: value(pair.loose),
        variance: variance(pair.from),
      })),
      all_fit_share: value(all),
    })),
    gauges: gauges.map(({ station, features, off }) => ({
      station,
      features: features.map((it) => ({
        feature: it.name,
        error_share_of_spread: it.errorShare,
        off_limits_share: value(it.off),
        bad_passed_share: value(it.badPassed),
        good_rejected_share: value(it.goodRejected),
      })),
      off_limits_share: value(off),
    })),
    readers: readers.map(({ station, unread }) => ({ station, unread_share: value(unread) })),
  };
}
