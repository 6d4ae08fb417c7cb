import type { Target } from '../experiment/targets.ts';
import { type Dimension, NUMBER_PATTERN, readQuantity } from '../scenario/units.ts';
import { type Known, measureNamed } from './measure-named.ts';
import { UsageError } from './usage-error.ts';

/** What a limit is written in, by the unit that the measure is shown in: a quantity of the scenario, or a plain unit. */
const WRITTEN: Readonly<Record<Known['shown']['unit'], { of?: Dimension; factor: number; example: string }>> =
  {
    'good /h': { of: 'rate', factor: 3600, example: '480 /h' },
    '%': { of: 'share', factor: 1, example: '2 %' },
    min: { of: 'time', factor: 1, example: '12 min' },
    parts: { factor: 1, example: '30 parts' },
    money: { factor: 1, example: '0.3 money' },
  };

const PARTS = new RegExp(`^(.*?)\\s*=?\\s*((?:${NUMBER_PATTERN})\\s*(?:[^\\d\\s].*)?)$`);

/** The limit in the unit that the measure's key names; undefined where it is not written in a unit of the measure. */
function limitOf({ shown }: Known, text: string): number | undefined {
  const { of, factor } = WRITTEN[shown.unit];
  if (of !== undefined) {
    const found = readQuantity(text.replace(/\s*good\s*(?=\/)/, ' '));
    return found?.dimension === of ? found.value * factor : undefined;
  }
  const [, number, unit] = /^(\S+)\s+(\S+)$/.exec(text) ?? [];
  const value = Number(number?.replace('\u2212', '-'));
  return unit === shown.unit && Number.isFinite(value) ? value : undefined;
}

function targetOf(text: string): Target {
  const [, name, quantity] = PARTS.exec(text.trim()) ?? [];
  if (!name || !quantity)
    throw new UsageError(
      `--target "${text}" expects a measure and a value with its unit, such as "throughput 480 /h"`,
    );
  const measure = measureNamed(name, '--target');
  const limit = limitOf(measure, quantity);
  if (limit === undefined)
    throw new UsageError(
      `--target "${text}": ${measure.name} expects a value such as "${WRITTEN[measure.shown.unit].example}", not "${quantity}"`,
    );
  const most = 'most' in measure ? measure.most : Number.POSITIVE_INFINITY;
  if (limit < 0 || limit > most)
    throw new UsageError(
      `--target "${text}": ${measure.name} is never ${limit < 0 ? 'below 0' : `above ${most * measure.shown.factor} ${measure.shown.unit}`}`,
    );
  return { measure, limit };
}

/**
 * The targets that the command names, in their order.
 * @param given values of --target, such as `throughput 480 /h`
 * @throws UsageError
 */
export function targetsGiven(given: readonly string[] = []): Target[] {
  const targets = given.map(targetOf);
  targets.forEach(({ measure, limit }, i) => {
    if (targets.findIndex((one) => one.measure === measure && one.limit === limit) !== i)
      throw new UsageError(`--target "${given[i]}" is given twice; once is enough`);
  });
  return targets;
}
