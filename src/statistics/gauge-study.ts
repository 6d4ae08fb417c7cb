import jstat from 'jstat';
import { mean } from 'simple-statistics';

/** Readings of one feature, by appraiser, trial and part: every appraiser gauges every part in every trial. */
export type StudyReadings = readonly (readonly (readonly number[])[])[];

/** Standard deviations that a gauge study finds, in the unit of its readings. */
export interface GaugeStudy {
  /** Repeatability, "equipment variation". */
  readonly repeatability: number;
  /** Between appraisers, "appraiser variation"; with what appraisers and parts have together, where that counts. */
  readonly reproducibility: number;
  readonly gauge: number;
  /** Between the parts of the study. */
  readonly part: number;
  readonly total: number;
  /** Of the total, as a share: % GRR. */
  readonly gaugeShare: number;
  /** Number of distinct categories, rounded down. */
  readonly categories: number;
}

/** Sums of squares of a study with their degrees of freedom. */
export interface Squares {
  readonly appraiser: number;
  readonly part: number;
  readonly interaction: number;
  readonly equipment: number;
  readonly total: number;
  /** Whether the interaction does not count and is pooled with the equipment. */
  readonly pooled: boolean;
}

/** The interaction counts when it is significant at this level: practice of the AIAG manual. */
const SIGNIFICANT = 0.25;
/** The square root of 2 cut off, as the AIAG manual has it. */
const CATEGORIES = 1.41;

/** Number of distinct categories of parts that a gauge tells apart, from the spread of the parts and its own. */
export const categoriesOf = (part: number, gauge: number): number => Math.floor((CATEGORIES * part) / gauge);

function studyOf(repeatability: number, reproducibility: number, part: number): GaugeStudy {
  const gauge = Math.hypot(repeatability, reproducibility);
  const total = Math.hypot(gauge, part);
  return {
    repeatability,
    reproducibility,
    gauge,
    part,
    total,
    gaugeShare: gauge / total,
    categories: categoriesOf(part, gauge),
  };
}

/** A variance estimated as a difference may come out below zero; it then counts as none. */
const sdOf = (variance: number): number => Math.sqrt(Math.max(0, variance));

/** Sum of squared distances from `middle`. */
const squares = (values: readonly number[], middle: number): number =>
  values.reduce((sum, value) => sum + (value - middle) ** 2, 0);

/** By appraiser, the mean of each part. */
function cellsOf(readings: StudyReadings): number[][] {
  return readings.map((trials) => trials[0]!.map((_, part) => mean(trials.map((trial) => trial[part]!))));
}

const partMeans = (cells: readonly number[][]): number[] =>
  cells[0]!.map((_, part) => mean(cells.map((own) => own[part]!)));

function mayIgnore(interaction: number, equipment: number, freedom: readonly [number, number]): boolean {
  if (interaction === 0 || equipment === 0) return interaction === 0;
  return 1 - jstat.jStat.centralF.cdf(interaction / equipment, ...freedom) > SIGNIFICANT;
}

/**
 * A study by analysis of variance, two-way with random effects, appraisers by parts. At least two appraisers, trials and
 * parts. Source: AIAG, Measurement Systems Analysis, 4th edition, chapter III and appendix A.
 */
export function studyByAnova(readings: StudyReadings): GaugeStudy & { readonly squares: Squares } {
  const [a, r, p] = [readings.length, readings[0]!.length, readings[0]![0]!.length];
  const all = readings.flat(2);
  const middle = mean(all);
  const cells = cellsOf(readings);
  const total = squares(all, middle);
  const appraiser = p * r * squares(cells.map(mean), middle);
  const part = a * r * squares(partMeans(cells), middle);
  const between = r * squares(cells.flat(), middle);
  const equipment = Math.max(0, total - between);
  const interaction = Math.max(0, between - appraiser - part);
  const [ofInteraction, ofEquipment] = [(a - 1) * (p - 1), a * p * (r - 1)];
  const pooled = mayIgnore(interaction / ofInteraction, equipment / ofEquipment, [
    ofInteraction,
    ofEquipment,
  ]);
  const within = pooled ? (interaction + equipment) / (ofInteraction + ofEquipment) : equipment / ofEquipment;
  // What the other two mean squares are compared with.
  const error = pooled ? within : interaction / ofInteraction;
  const shared = pooled ? 0 : (error - within) / r;
  const appraisers = Math.max(0, (appraiser / (a - 1) - error) / (p * r));
  return {
    ...studyOf(
      Math.sqrt(within),
      sdOf(appraisers + Math.max(0, shared)),
      sdOf((part / (p - 1) - error) / (a * r)),
    ),
    squares: { appraiser, part, interaction, equipment, total, pooled },
  };
}

/** Factors from a mean range to a standard deviation, by the number of trials, appraisers and parts from 2 on. */
const K1 = [0.8862, 0.5908];
// biome-ignore lint/suspicious/noApproximativeNumericConstant: as published, with four digits
const K2 = [0.7071, 0.5231];
// biome-ignore lint/suspicious/noApproximativeNumericConstant: as published, with four digits
const K3 = [0.7071, 0.5231, 0.4467, 0.403, 0.3742, 0.3534, 0.3375, 0.3249, 0.3146];

/** The most trials, appraisers and parts that the published factors of the average and range method reach. */
export const MOST_BY_RANGES = { trials: K1.length + 1, appraisers: K2.length + 1, parts: K3.length + 1 };

const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/**
 * A study by the average and range method: 2 or 3 appraisers and trials, 2 to 10 parts. Source: AIAG, Measurement Systems
 * Analysis, 4th edition, chapter III; the factors are 1/d2* of its appendix C.
 */
export function studyByRanges(readings: StudyReadings): GaugeStudy {
  const [a, r, p] = [readings.length, readings[0]!.length, readings[0]![0]!.length];
  const cells = cellsOf(readings);
  const ranges = readings.flatMap((trials) =>
    trials[0]!.map((_, part) => range(trials.map((trial) => trial[part]!))),
  );
  const repeatability = mean(ranges) * K1[r - 2]!;
  const appraisers = (range(cells.map(mean)) * K2[a - 2]!) ** 2 - repeatability ** 2 / (p * r);
  return studyOf(repeatability, sdOf(appraisers), range(partMeans(cells)) * K3[p - 2]!);
}
