import type { FeatureSpec } from '../scenario/parts.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { formedTolerance } from '../standards/formed-tolerance.ts';

/** Lengths are written in several units and added in binary. */
const ROUNDING = 1e-9;
const DIGITS = 3;
const LENGTH_DIGITS = 6;
const number = (value: number, digits = DIGITS) => String(Number(value.toPrecision(digits)));

function closeText({ name, aim, limits, mould }: FeatureSpec): string[] {
  if (mould === undefined || limits === null) return [];
  const tolerance = (limits.upper - limits.lower) / 2;
  const { closest, widest } = formedTolerance(aim);
  if (tolerance >= closest * (1 - ROUNDING)) return [];
  const common = widest > closest ? `${number(closest)} to ${number(widest)}` : number(closest);
  return [
    `"${name}" has a tolerance of ${number(tolerance)} mm, closer than the ${common} mm that formed parts of ` +
      `${number(aim, LENGTH_DIGITS)} mm are commonly held to: it may need trimming, or gauging of every part`,
  ];
}

/** Which dimensions that a forming station gives by a mould have limits closer than the practice of the trade. */
export const formedToleranceTexts = (station: string, { parts }: Scenario): string[] =>
  parts.flatMap(({ features }) => features.filter(({ madeAt }) => madeAt === station).flatMap(closeText));
