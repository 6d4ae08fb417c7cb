import type { Comparison, MeasureComparison } from '../experiment/comparison.ts';
import { amount, formatOf } from './format.ts';
import { bestText, moreText, surelyText, unchanged } from './judged-text.ts';
import { counted, listedNames } from './words.ts';

/** Who may be best, where there are more than two to choose among: of two the verdict says it. */
function bestNote({ best, measure }: MeasureComparison): string[] {
  return best.length > 2 ? [bestText(best, measure.name)] : [];
}

/** What the verdicts of a table leave out where they are words alone. */
export function besideVerdicts({ rows, worth }: MeasureComparison): string[] {
  const more = rows.flatMap((row) => {
    const text = moreText(row, worth);
    return text === '' ? [] : [`${row.policy}, ${text}`];
  });
  const surely = [...new Set(rows.map(surelyText))].filter((text) => text !== '');
  return [
    ...(more.length > 0 ? [`undecided: ${more.join('; ')}.`] : []),
    ...surely.map((text) => {
      const names = rows.filter((row) => surelyText(row) === text).map(({ policy }) => policy);
      return `${listedNames(names)}: ${text}.`;
    }),
  ];
}

/** Whether no policy that is compared changed a measure in any run. */
export function noneChanged({ rows }: MeasureComparison): boolean {
  const compared = rows.filter(({ difference }) => difference !== null);
  return compared.length > 0 && compared.length >= rows.length - 1 && compared.every(unchanged);
}

function still(compared: MeasureComparison): string[] {
  if (noneChanged(compared)) return ['No change in any run.'];
  const names = compared.rows.filter(unchanged).map(({ policy }) => policy);
  return names.length > 0 ? [`${listedNames(names)}: no change in any run.`] : [];
}

/** An interval without width looks like a mistake where it is none. */
function steady({ rows }: MeasureComparison): string[] {
  return rows.flatMap(({ policy, difference }) => {
    if (!difference || difference.lower === null || difference.upper === null) return [];
    const rounding = 1e-9 * Math.abs(difference.value);
    if (difference.value === 0 || difference.upper - difference.lower > rounding) return [];
    return [`${policy}: every run gave the same difference, so that its interval has no width.`];
  });
}

/** What the reader of one measure's table must know besides: units, what is worth having, values made from fewer runs, the best. */
export function notesOf(compared: MeasureComparison, { policies, seeds }: Comparison): string[] {
  const { unit, differenceUnit } = formatOf(compared);
  const { measure, worth } = compared;
  const unitNote =
    policies.length > 1 && differenceUnit !== unit && !noneChanged(compared)
      ? [`Differences are in ${differenceUnit}.`]
      : [];
  const worthNote = worth > 0 ? [`Worth having: more than ${amount(worth, measure)}.`] : [];
  const fewer = compared.rows
    .filter(({ estimate }) => estimate.runs < seeds)
    .map(({ policy, estimate }) => `${policy}: ${estimate.runs} of ${counted(seeds, 'run')} gave a value.`);
  return [
    ...unitNote,
    ...worthNote,
    ...fewer,
    ...still(compared),
    ...steady(compared),
    ...bestNote(compared),
  ];
}
