import { z } from 'zod';
import { MOST_COUNTED } from './limits.ts';
import { suggestion } from './nearest.ts';
import {
  type Dimension,
  exampleOf,
  NUMBER_PATTERN,
  nameOf,
  readDoubleRatio,
  readQuantity,
  readRatio,
  unitsOf,
} from './units.ts';

/** `lead-time` in the file is `leadTime` in the program. */
type CamelKey<Key> = Key extends `${infer Head}-${infer Tail}` ? `${Head}${Capitalize<CamelKey<Tail>>}` : Key;
type CamelKeys<T> = { readonly [Key in keyof T as CamelKey<Key>]: T[Key] };

function camelKeys<T extends object>(object: T): CamelKeys<T> {
  const camel = (key: string) => key.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
  return Object.fromEntries(
    Object.entries(object).map(([key, value]) => [camel(key), value]),
  ) as CamelKeys<T>;
}

/** As the file has it. */
export const kebab = (key: string): string => key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** A mapping with these keys and no others. */
export function entry<Shape extends z.ZodRawShape>(shape: Shape) {
  const known = Object.keys(shape);
  return z
    .strictObject(shape, {
      error: (issue) => {
        if (issue.code === 'unrecognized_keys') {
          return issue.keys.map((key) => `unknown key "${key}"${suggestion(key, known)}`).join('\n');
        }
        return issue.code === 'invalid_type'
          ? `expected a mapping with the keys ${known.join(', ')}`
          : undefined;
      },
    })
    .transform(camelKeys);
}

/** Bounds a quantity may be held to, with the words for a message. */
interface Bound {
  readonly words: string;
  readonly holds: (value: number) => boolean;
}
const anyValue: Bound = { words: '', holds: () => true };
const notNegative: Bound = { words: 'not negative', holds: (value) => value >= 0 };
const positive: Bound = { words: 'above zero', holds: (value) => value > 0 };
const someShare: Bound = {
  words: 'above 0 % and up to 100 %',
  holds: (value) => value > 0 && value <= 1,
};
const moreThanWhole: Bound = {
  words: 'above 100 % and up to 1000 %',
  holds: (value) => value > 1 && value <= 10,
};
const upToWhole: Bound = { words: 'from 0 % to 100 %', holds: (value) => value >= 0 && value <= 1 };

/** What a quantity with its unit looks like, for the JSON schema. */
export function quantityPattern(dimension: Dimension): string {
  const units = unitsOf(dimension);
  return `^\\s*${NUMBER_PATTERN}\\s*(?:${units.map((unit) => unit.replace('/', '\\/').replace('µ', '[µμ]')).join('|')})\\s*$`;
}

/** `06:30` as the time since midnight that a scenario writes for it; undefined for anything else. */
function sinceMidnight(given: string): string | undefined {
  const [, hours, minutes] = /^\s*(\d{1,2}):([0-5]\d)\s*$/.exec(given) ?? [];
  return hours && `${Number((Number(hours) + Number(minutes) / 60).toFixed(4))} h`;
}

/** Messages call it as its dimension is called, with its example, where no others are given. */
function quantity(
  dimension: Dimension,
  bound: Bound,
  { called, example } = { called: nameOf(dimension), example: exampleOf(dimension) },
) {
  const expected = `expected ${called} with its unit (${unitsOf(dimension).join(', ')}), such as ${example}`;
  return z
    .union([z.string(), z.number()], { error: expected })
    .meta({
      type: 'string',
      anyOf: undefined,
      pattern: quantityPattern(dimension),
      description: `${called}, such as ${example}${bound.words && `; ${bound.words}`}`,
    })
    .transform((given, context) => {
      const read = readQuantity(String(given));
      if (read?.dimension === dimension && bound.holds(read.value)) return read.value;
      const clock = dimension === 'time' ? sinceMidnight(String(given)) : undefined;
      const why =
        read?.dimension === dimension
          ? `${given} is not allowed: ${called} here is ${bound.words}`
          : typeof given === 'number'
            ? `${given} has no unit; ${expected}`
            : clock
              ? `"${given}" has no unit; ${expected}; for a time of day, the time since midnight, ${clock}`
              : `"${given}": ${expected}`;
      context.addIssue({ code: 'custom', message: why });
      return z.NEVER;
    });
}

export const duration = quantity('time', notNegative);
export const positiveDuration = quantity('time', positive);
export const length = quantity('length', anyValue);
export const spread = quantity('length', notNegative);
export const positiveLength = quantity('length', positive);
export const share = quantity('share', upToWhole);
export const positiveShare = quantity('share', someShare);
export const increasedShare = quantity('share', moreThanWhole);
export const anyShare = quantity('share', notNegative);
/** Any share but none. */
export const anyShareButNone = quantity('share', positive);
export const rate = quantity('rate', positive);
export const temperatureDifference = quantity('temperature', anyValue, {
  called: 'a difference of temperature',
  example: '5 °C',
});
export const positiveForce = quantity('force', positive);

/** What is said of a temperature that stands in kelvins where its zero counts; undefined for anything else. */
function sinceAbsoluteZero(given: string): string | undefined {
  const [, kelvins] = /^\s*(\S+?)\s*K\s*$/.exec(given) ?? [];
  const celsius = kelvins === undefined ? Number.NaN : Number(kelvins) - 273.15;
  if (Number.isNaN(celsius)) return undefined;
  return `"${given}": K is for differences; a temperature is given in °C, as ${Number(celsius.toFixed(2))} °C`;
}

/** @param zeroCounts whether it is no difference, so that K and °C are not the same */
function anyMeasured(zeroCounts: boolean) {
  return z
    .union([z.string(), z.number()], {
      error: 'expected a value with its unit, such as 150 °C, 80 kPa or 12 s',
    })
    .meta({
      type: 'string',
      anyOf: undefined,
      description: 'a value with its unit, such as 150 °C, 80 kPa or 12 s',
    })
    .transform((given, context) => {
      const read = readQuantity(String(given));
      const absolute = zeroCounts ? sinceAbsoluteZero(String(given)) : undefined;
      if (read && absolute === undefined) return read;
      const message =
        absolute ?? `"${given}": expected a value with its unit, such as 150 °C, 80 kPa or 12 s`;
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}

/** A difference of whatever dimension, kept with that dimension: forming settings are temperatures, pressures or times. */
export const measured = anyMeasured(false);
/** The same of where a setting stands. */
export const level = anyMeasured(true);

/** What `read` makes of a text; whatever it does not take is refused with what was expected. */
function readBy<Read>(read: (text: string) => Read | undefined, expected: string) {
  return z
    .union([z.string(), z.number()], { error: expected })
    .meta({ type: 'string', anyOf: undefined, description: expected.replace('expected ', '') })
    .transform((given, context) => {
      const found = read(String(given));
      if (found !== undefined) return found;
      context.addIssue({ code: 'custom', message: `"${given}": ${expected}` });
      return z.NEVER;
    });
}

/** A length, a time or a share per unit of something, such as `0.012 mm/°C`. */
export const ratio = (of: Dimension, example: string) =>
  readBy(
    (text) => {
      const read = readRatio(text);
      return read?.of === of ? read : undefined;
    },
    `expected ${nameOf(of)} per something, such as ${example}`,
  );

/** A length per product of two things or per square of one. */
export const lengthPerTwo = (example: string) =>
  readBy((text) => {
    const read = readDoubleRatio(text);
    return read?.of === 'length' ? read : undefined;
  }, `expected a length per two things, such as ${example}`);

/** A change of whatever dimension per time. */
export const changeRate = readBy((text) => {
  const read = readRatio(text);
  return read?.per === 'time' ? { value: read.value, dimension: read.of } : undefined;
}, 'expected a change per time, such as 0.5 °C/h');

/** A whole number within bounds. */
export function count(least: number, most = MOST_COUNTED) {
  const error = `expected a whole number from ${least} to ${most}`;
  return z.int({ error }).min(least, { error }).max(most, { error });
}

/** A word out of a list; `forms` show what else may stand there, for a message. */
export function word<const Words extends readonly [string, ...string[]]>(
  words: Words,
  forms: readonly string[] = [],
) {
  const known = [...words, ...forms];
  return z.enum(words, {
    error: (issue) =>
      issue.input === undefined
        ? `expected one of ${known.join(', ')}`
        : `"${String(issue.input)}" is not known here${suggestion(String(issue.input), known)}`,
  });
}

export const text = z.string({ error: 'expected text' });
const NAME = 'expected a name that does not start with a digit and has no "." or "/" in it';

/** Where nothing stands, what the name would be of says more than how names are written. */
export const name = z
  .string({
    error: ({ input, inst }) => {
      const of = z.globalRegistry.get(inst as z.ZodString)?.description;
      return input === undefined && of ? `expected a name (${of})` : NAME;
    },
  })
  .regex(/^[^\d\s./][^./]*$/, { error: NAME });

const LABEL = 'expected a name that does not start with a digit';

/** A name that nothing refers to by its parts. */
export const label = z.string({ error: LABEL }).regex(/^[^\d\s]/, { error: LABEL });

/** A feature of the part by its name, or one of a mate as MATE.FEATURE. */
export const featureOrMates = z
  .string({ error: 'expected a feature of the part, or one of a mate as MATE.FEATURE' })
  .min(1, { error: 'expected a feature of the part, or one of a mate as MATE.FEATURE' });

/** One of several mappings, told apart by the word under `key`. */
export function kinds<
  const Options extends readonly [z.core.$ZodTypeDiscriminable, ...z.core.$ZodTypeDiscriminable[]],
>(key: string, words: readonly string[], options: Options) {
  return z.discriminatedUnion(key, options, {
    error: (issue) => {
      const given = (issue.input as Record<string, unknown> | null)?.[key];
      return given === undefined
        ? `expected a mapping with "${key}", one of ${words.join(', ')}`
        : `${key}: "${String(given)}" is not known${suggestion(String(given), words)}`;
    },
  });
}

/** Entries by name, in the order of the file; each becomes an object with its `name`. */
export function named<Item extends z.ZodType<object>>(item: Item) {
  return z
    .record(name, item, { error: 'expected a mapping from names to entries' })
    .transform((entries) =>
      Object.entries(entries).map(([name, value]) => ({ name, ...(value as z.output<Item>) })),
    );
}

/** The same, for a section that may be left out. */
export const namedOrNone = <Item extends z.ZodType<object>>(item: Item) =>
  named(item)
    .optional()
    .transform((entries) => entries ?? []);
