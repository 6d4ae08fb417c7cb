import { square } from '../kernel/elementary.ts';
import { normalQuantile } from '../kernel/normal-quantile.ts';
import type { ByGrade } from '../scenario/grades.ts';
import type { MarkQualitySpec } from '../scenario/stations/mark-quality.ts';
import type { SpecOf } from '../scenario/stations.ts';
import { codewordsOf, wrongCodewords } from '../standards/data-matrix.ts';
import {
  GRADES,
  gradeOf,
  MARK_LADDERS,
  type MarkParameter,
  parameterGrade,
  unusedErrorCorrection,
} from '../standards/mark-grade.ts';
import { normalShare } from '../statistics/normal.ts';

/** Grades of a scan count from 0 for F to 4 for A. */
const BEST = GRADES.length - 1;

/** Points of the integral over what is a mark's own. */
const POINTS = 8192;

/** Fills `chances[g]` with the chance that a scan earns grade g or better, given the mark's own normal deviate. */
type Parameter = (deviate: number, chances: Float64Array) => void;

function measured(
  parameter: MarkParameter,
  { mean, sd, scanSd }: NonNullable<MarkQualitySpec['contrast']>,
): Parameter {
  const { better, limits } = MARK_LADDERS[parameter];
  const sign = better === 'higher' ? 1 : -1;
  return (deviate, chances) => {
    const own = mean + sd * deviate;
    for (let grade = 1; grade <= BEST; grade++) {
      const above = sign * (own - limits[BEST - grade]!);
      chances[grade] = scanSd > 0 ? normalShare(above / scanSd) : Number(above >= 0);
    }
  };
}

function errorCorrection({
  symbol,
  wrongCodewords: wrong,
}: NonNullable<MarkQualitySpec['unusedErrorCorrection']>): Parameter {
  const { check } = codewordsOf(symbol);
  const fixed = new Float64Array(BEST + 1);
  for (const [number, chance] of wrongCodewords(symbol, wrong).entries()) {
    const earned = parameterGrade('unusedErrorCorrection', unusedErrorCorrection(0, number, check));
    for (let grade = 1; grade <= earned; grade++) fixed[grade]! += chance;
  }
  return (_deviate, chances) => chances.set(fixed);
}

/** The chances of the sums of so many independent scans, each with these chances of its grades. */
function sumsOf(scans: number, one: Float64Array): number[] {
  let sums = [1];
  for (let scan = 0; scan < scans; scan++) {
    const next = new Array<number>(sums.length + BEST).fill(0);
    for (const [sum, chance] of sums.entries())
      for (let grade = 0; grade <= BEST; grade++) next[sum + grade]! += chance * one[grade]!;
    sums = next;
  }
  return sums;
}

/** Where scans of one mark do not differ, or there is one, all spread may be told as that of the scan. */
function inOneScan(quality: MarkQualitySpec): MarkQualitySpec {
  const merged = Object.entries(quality).map(([key, given]) => {
    if (typeof given !== 'object' || !('mean' in given)) return [key, given];
    return [key, { mean: given.mean, sd: 0, scanSd: Math.sqrt(square(given.sd) + square(given.scanSd)) }];
  });
  return { ...Object.fromEntries(merged), scans: 1 };
}

function scansDiffer({ scans, ...parameters }: MarkQualitySpec): boolean {
  return (
    scans > 1 &&
    Object.values(parameters).some((given) => given !== undefined && (!('mean' in given) || given.scanSd > 0))
  );
}

/**
 * The shares of the grades by quality: the lowest parameter grades a scan, the mean over the scans the mark (ISO/IEC
 * 15415). Scans are independent given what is the mark's own, over which the mean is taken at evenly spread points: the
 * additive sequence of the square roots of primes.
 */
function byQuality(given: MarkQualitySpec): ByGrade {
  const differ = scansDiffer(given);
  const quality = differ ? given : inOneScan(given);
  const parameters = (Object.keys(MARK_LADDERS) as MarkParameter[]).flatMap((parameter) => {
    const spec = quality[parameter];
    if (spec === undefined) return [];
    return 'symbol' in spec ? errorCorrection(spec) : measured(parameter, spec);
  });
  const roots = [2, 3, 5, 7, 11].map(Math.sqrt);
  const shares = GRADES.map(() => 0);
  const points = differ ? POINTS : 1;
  const own = new Float64Array(BEST + 1);
  const all = new Float64Array(BEST + 1);
  for (let point = 0; point < points; point++) {
    all.fill(1);
    for (const [i, parameter] of parameters.entries()) {
      parameter(normalQuantile(((point + 0.5) * roots[i]!) % 1), own);
      for (let grade = 1; grade <= BEST; grade++) all[grade]! *= own[grade]!;
    }
    for (let grade = 0; grade < BEST; grade++) all[grade]! -= all[grade + 1]!;
    for (const [sum, chance] of sumsOf(quality.scans, all).entries())
      shares[gradeOf(sum / quality.scans)]! += chance / points;
  }
  return shares;
}

/** What was worked out before: a line is built for every run. */
const known = new WeakMap<MarkQualitySpec, ByGrade>();

/** The shares of the grades among the marks of a station that took, by place in `GRADES`. */
export function gradeSharesOf({ grades, quality }: SpecOf<'mark'>): ByGrade {
  if (quality === undefined) return grades ?? GRADES.map((_, i) => (i === 0 ? 1 : 0));
  if (!known.has(quality)) known.set(quality, byQuality(quality));
  return known.get(quality)!;
}
