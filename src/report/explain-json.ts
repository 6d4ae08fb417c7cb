import type { ExplainedPlan } from '../experiment/explained/gauge.ts';
import type { Explanation } from '../experiment/explanation.ts';
import type { Compared } from '../experiment/judge.ts';
import type { Contribution } from '../line/prediction/model.ts';
import { GRADES } from '../standards/mark-grade.ts';

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
    level: compared.simulated?.level ?? null,
    method: compared.simulated?.method ?? null,
    differs: compared.differs,
  };

const variance = (from: readonly Contribution[]) =>
  from.map(({ name, variance }) => ({ from: name, variance_mm2: variance }));

const range = (given: { lower: number; upper: number } | undefined) =>
  given ? [given.lower, given.upper] : null;

const planned = ({ letter, sample, accept, accepts }: ExplainedPlan['normal']) => ({
  letter,
  sample_parts: sample,
  accept_parts: accept,
  accepted_share: accepts,
});

/** Numbers are in the unit that their key names, shares from 0 to 1; null is no value, or one without bound. */
export function explainJson({ explanation, file, title, sha256 }: ExplainSource): object {
  const {
    seeds,
    shown,
    deciding,
    comparisons,
    differing,
    forming,
    features,
    assemblies,
    gauges,
    marks,
    readers,
  } = explanation;
  return {
    format: 'mendline explain 1',
    scenario: { file, title, sha256 },
    seeds: Array.from({ length: seeds }, (_, i) => i + 1),
    level: shown,
    deciding_level: deciding,
    comparisons,
    differing,
    forming: forming.map((it) => ({
      station: it.station,
      incomplete_share: value(it.incomplete),
      webbed_share: value(it.webbed),
      thin_share: value(it.thin),
      wall_mean_mm: value(it.wall?.mean ?? null),
      wall_sd_mm: value(it.wall?.sd ?? null),
    })),
    features: features.map(({ spec, mean, sd, outside, pp, ppk, shifts, from, openBy }) => ({
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
      mean_shifts: shifts.map(({ name, shift }) => ({ from: name, shift_mm: shift })),
      variance: variance(from),
      no_closed_form: openBy,
    })),
    assemblies: assemblies.map(({ station, pairs, all, forcing, openBy }) => ({
      station,
      pairs: pairs.map((pair) => ({
        hole: pair.hole,
        shaft: pair.shaft,
        least_mm: pair.least,
        most_mm: pair.most,
        worst_case_mm: range(pair.stack?.worst),
        root_sum_square_mm: range(pair.stack?.rootSumSquare),
        clearance_mm: value(pair.clearance),
        sd_mm: value(pair.sd),
        fit_share: value(pair.fits),
        tight_share: value(pair.tight),
        loose_share: value(pair.loose),
        variance: variance(pair.from),
      })),
      all_fit_share: value(all),
      pressed_share: value(forcing?.forced ?? null),
      spoilt_share: value(forcing?.damaged ?? null),
      too_tight_to_press_share: value(forcing?.tight ?? null),
      no_closed_form: openBy,
    })),
    gauges: gauges.map(({ station, features, off, plan }) => ({
      station,
      features: features.map((it) => ({
        feature: it.name,
        error_share_of_spread: it.errorShare,
        distinct_categories: it.categories,
        off_limits_share: value(it.off),
        bad_passed_share: value(it.badPassed),
        good_rejected_share: value(it.goodRejected),
      })),
      off_limits_share: value(off),
      plan: plan && {
        lot_parts: plan.lot,
        normal: planned(plan.normal),
        tightened: planned(plan.tightened),
        lots_accepted_share: value(plan.accepted),
      },
    })),
    marks: marks.map(({ station, takesHold, grades }) => ({
      station,
      takes_hold_share: takesHold,
      grade_shares: Object.fromEntries(GRADES.map((grade, i) => [grade, grades[i]])),
    })),
    readers: readers.map(({ station, unread }) => ({ station, unread_share: value(unread) })),
  };
}
