import { parse } from 'yaml';
import { type Factor, type Level, levelOf, quantityOf, shortNames } from '../experiment/varied/factor.ts';
import type { Raw } from '../scenario/raw.ts';
import { UsageError } from './usage-error.ts';

const EXAMPLE = '--over "stations/trimming/buffer=8,16,24"';

/** What one `--over` says, its name not told from others yet. */
type Over = Omit<Factor, 'name'> & { readonly at: string };

/** The text at commas that stand in no brackets and no quotes. */
function split(text: string): string[] {
  const parts = [''];
  let depth = 0;
  let quote = '';
  for (const character of text) {
    if (quote !== '') {
      if (character === quote) quote = '';
    } else if (character === '"' || character === "'") quote = character;
    else if ('[{('.includes(character)) depth++;
    else if (']})'.includes(character)) depth--;
    if (character === ',' && depth === 0 && quote === '') parts.push('');
    else parts[parts.length - 1] += character;
  }
  return parts.map((part) => part.trim());
}

function read(words: string, at: string): Level {
  if (words === '') throw new UsageError(`--over "${at}" leaves a value out; write it as in ${EXAMPLE}`);
  try {
    return { words, is: parse(words, { logLevel: 'error' }) as Raw };
  } catch {
    throw new UsageError(
      `--over "${at}": "${words}" is no value; write it as it would stand in the scenario`,
    );
  }
}

/** Of several numbers the unit that one or more of them name; refused where they name different ones. */
function commonUnit(ends: readonly { readonly unit: string }[], at: string): string {
  const units = [...new Set(ends.map(({ unit }) => unit).filter((unit) => unit !== ''))];
  if (units.length > 1)
    throw new UsageError(`--over "${at}" is given in ${units.join(' and ')}; write a range in one unit`);
  return units[0] ?? '';
}

const MOST_LISTED = 10_000;

/** `4 to 24` or `30 s to 60 s by 10 s`; null for what is no range. */
function rangeOf(text: string, at: string): Pick<Over, 'levels' | 'range'> | null {
  const [, ...given] = /^(\S+(?: \S+)?) to (\S+(?: \S+)?)(?: by (\S+(?: \S+)?))?$/.exec(text) ?? [];
  const quantities = given
    .filter((words) => words !== undefined)
    .map((words) => quantityOf({ words, is: words }));
  if (quantities.length < 2 || quantities.some((own) => own === null)) return null;
  const found = quantities.map((own) => own!);
  const unit = commonUnit(found, at);
  const [from, to, step] = found.map(({ value }) => value) as [number, number, number | undefined];
  if (to <= from) throw new UsageError(`--over "${at}": ${text} does not rise; write the lower end first`);
  const whole = unit === '' && given.every((words) => words === undefined || /^[-+]?\d+$/.test(words));
  const range = { from, to, unit, whole };
  if (step === undefined) return { levels: [levelOf(from, range), levelOf(to, range)], range };
  if (step <= 0) throw new UsageError(`--over "${at}": ${text} gets nowhere; "by" takes a step above 0`);
  const steps = Math.floor((to - from) / step + 1e-9);
  if (steps >= MOST_LISTED)
    throw new UsageError(`--over "${at}": ${text} are ${steps + 1} values; take a longer step`);
  return {
    levels: Array.from({ length: steps + 1 }, (_, i) => levelOf(from + i * step, range)),
    range: null,
  };
}

function one(text: string): Over {
  const [, at = '', values = ''] = /^([^=]*)=(.*)$/s.exec(text) ?? [];
  if (at.trim() === '' || !text.includes('='))
    throw new UsageError(`--over "${text}" is no place with values behind "="; write it as in ${EXAMPLE}`);
  if (values.trim() === '')
    throw new UsageError(`--over "${at}" has no values behind "="; write them as in ${EXAMPLE}`);
  const place = at.trim();
  const range = rangeOf(values.trim().replace(/\s+/g, ' '), place);
  if (range !== null && range.range !== null) return { at: place, ...range };
  const levels = range?.levels ?? split(values).map((words) => read(words, place));
  if (levels.length < 2)
    throw new UsageError(
      `--over "${place}" has one value, ${levels[0]!.words}, so nothing varies; give two or more, or a range such as 4 to 24`,
    );
  const keys = levels.map(({ is }) => JSON.stringify(is));
  const twice = levels.find((_, i) => keys.indexOf(keys[i]!) !== i);
  if (twice) throw new UsageError(`--over "${place}" has the value ${twice.words} twice; once is enough`);
  return { at: place, levels, range: null };
}

/** Of the experiment, not of the line. */
const NOT_OF_THE_LINE: Readonly<Record<string, string>> = {
  'run/seeds': 'how many seeds there are is said by --seeds',
  title: 'a title changes nothing',
  about: 'what is said about a line changes nothing',
};

/**
 * What the options `--over` vary, in their order.
 * @throws UsageError
 */
export function factorsOf(texts: readonly string[] = []): Factor[] {
  if (texts.length === 0)
    throw new UsageError(`nothing is varied; name a place and its values, such as ${EXAMPLE}`);
  const found = texts.map(one);
  const places = found.map(({ at }) => at);
  for (const [i, at] of places.entries()) {
    if (places.indexOf(at) !== i)
      throw new UsageError(`--over "${at}" is given twice; write all its values behind one "="`);
    const above = places.find((other) => at.startsWith(`${other}/`));
    if (above)
      throw new UsageError(
        `--over "${at}" lies within "${above}", which is varied as well; vary one of them`,
      );
    if (NOT_OF_THE_LINE[at] !== undefined) throw new UsageError(`--over "${at}": ${NOT_OF_THE_LINE[at]}`);
  }
  const names = shortNames(places);
  return found.map((own, i) => ({ ...own, name: names[i]! }));
}
