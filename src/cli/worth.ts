import { MEASURES, type MeasureKey } from '../line/measures.ts';
import { suggestion } from '../scenario/nearest.ts';
import { NUMBER_PATTERN } from '../scenario/units.ts';
import { type Known, measureNamed } from './measure-named.ts';
import { UsageError } from './usage-error.ts';

const REMEDY = 'it expects an amount with its unit, such as "0.5 /h" or "scrap rate=0.5 %"';
const WORTH = '--worth';
const shape = new RegExp(`^(${NUMBER_PATTERN})\\s*(.*)$`);

/** `good /h` is written `/h`, too. */
const spellings = ({ shown: { unit } }: Known): string[] =>
  unit.startsWith('good ') ? [unit, unit.slice('good '.length)] : [unit];

const shortUnit = (measure: Known): string => spellings(measure).at(-1)!;

/** The one measure that is shown in this unit. */
function shownIn(unit: string, amount: string, option: string): Known {
  const found = MEASURES.filter((measure) => spellings(measure).includes(unit));
  if (found.length === 1) return found[0]!;
  if (found.length > 1) {
    const names = found.map(({ name }) => name);
    throw new UsageError(
      `${option} "${amount} ${unit}" may be of ${names.join(', ')}; name one, such as "${names[0]}=${amount} ${unit}"`,
    );
  }
  if (unit === '') throw new UsageError(`${option} "${amount}" has no unit; ${REMEDY}`);
  const units = [...new Set(MEASURES.map(shortUnit))];
  throw new UsageError(`${option} knows no unit "${unit}"${suggestion(unit, units)}`);
}

function one(text: string, option: string): readonly [MeasureKey, number] {
  const cut = text.lastIndexOf('=');
  const [, amount, unit] = shape.exec(text.slice(cut + 1).trim()) ?? [];
  if (amount === undefined || unit === undefined)
    throw new UsageError(`${option} "${text}" names no amount; ${REMEDY}`);
  const measure = cut < 0 ? shownIn(unit, amount, option) : measureNamed(text.slice(0, cut).trim(), option);
  if (!spellings(measure).includes(unit))
    throw new UsageError(
      `${option} "${text}" is not in the unit of ${measure.name}; write "${measure.name}=${amount} ${shortUnit(measure)}"`,
    );
  // Reports print a minus sign that is no hyphen.
  const value = Number(amount.replace('\u2212', '-')) / measure.shown.factor;
  if (!(value > 0 && Number.isFinite(value)))
    throw new UsageError(
      `${option} "${text}" is not above zero${option === WORTH ? `; without it every difference of ${measure.name} is worth having` : ''}`,
    );
  return [measure.key, value];
}

/** Says of which measures something was said to be worth having although no run gives a value for them. */
export function unusedWorth(
  worth: ReadonlyMap<MeasureKey, number>,
  { measures }: { readonly measures: readonly { readonly measure: { readonly key: string } }[] },
): string[] {
  return MEASURES.filter(
    ({ key }) => worth.has(key) && !measures.some(({ measure }) => measure.key === key),
  ).map(({ name }) => `No run gives a value for ${name}, so its --worth decides nothing.`);
}

/**
 * What `--worth` says a difference must exceed to be worth having, by measure in the unit of its key; 0 for the others.
 * @param given values of --worth: an amount in the unit that the measure is shown in, after its name or key and `=` where
 * several measures are shown in that unit
 * @param option what messages call it
 * @throws UsageError
 */
export function worthOf(given: readonly string[] = [], option = WORTH): ReadonlyMap<MeasureKey, number> {
  const found = new Map<MeasureKey, number>();
  for (const text of given) {
    const [key, value] = one(text, option);
    if (found.has(key))
      throw new UsageError(
        `--worth is given twice for ${MEASURES.find((measure) => measure.key === key)!.name}; once is enough`,
      );
    found.set(key, value);
  }
  return found;
}
