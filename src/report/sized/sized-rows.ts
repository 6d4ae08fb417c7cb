import type { Step } from '../../experiment/sizing/look-closer.ts';
import type { Configuration, Sized } from '../../experiment/sizing/sized.ts';
import type { Target } from '../../experiment/sizing/target.ts';
import { sizeAt } from '../../scenario/sizings.ts';
import { percentLevel } from '../cells.ts';
import { formatOf } from '../format.ts';
import { formatFor, limitOf, plain, signedPlain } from './sized-words.ts';

/** A column of words or numbers, for text and page. */
export interface RowColumn {
  readonly heading: string;
  readonly side: 'left' | 'right';
  readonly cells: readonly string[];
}

/** The means at the choice, each with a bound at the level asked for. */
export function meanRows({ look, targets, sure }: Sized): RowColumn[] {
  if (!look) return [];
  const formats = targets.map((target, i) => formatFor(target, [look.means[i]!]));
  const bound = (target: Target, i: number) => {
    const { lower, upper } = look.means[i]!;
    const end = target.better === 'higher' ? lower : upper;
    return end === null
      ? 'no bound'
      : `${target.better === 'higher' ? 'at least' : 'at most'} ${formats[i]!.value(end)}`;
  };
  return [
    { heading: 'measure', side: 'left', cells: targets.map(({ name, shown }) => `${name}, ${shown.unit}`) },
    { heading: 'target', side: 'right', cells: targets.map((target) => withoutUnit(target)) },
    { heading: 'mean', side: 'right', cells: targets.map((_, i) => formats[i]!.value(look.means[i]!.value)) },
    { heading: `bound, ${percentLevel(sure)} %`, side: 'right', cells: targets.map(bound) },
  ];
}

const withoutUnit = (target: Target): string => limitOf(target).replace(` ${target.shown.unit}`, '');

const stepName = ({ sizes }: Sized, { size, point }: Step): string =>
  `${sizes[size]!.name} ${sizeAt(sizes[size]!, point[size]!)}`;

/** What a step up buys and a step down saves, size by size. */
export function stepRows(sized: Sized): RowColumn[] {
  const { look, targets, money } = sized;
  if (!look || look.steps.length === 0) return [];
  const { steps } = look;
  return [
    { heading: 'instead', side: 'left', cells: steps.map((step) => stepName(sized, step)) },
    { heading: `cost,\n${money}`, side: 'right', cells: steps.map(({ cost }) => signedPlain(cost)) },
    ...targets.flatMap((target, i): RowColumn[] => {
      const estimates = steps.map(({ changes }) => changes[i]!);
      const rows = estimates.map((estimate) => ({ estimate, difference: estimate }));
      const format = formatOf({ measure: target, rows });
      return [
        {
          heading: `${target.name},\n${format.differenceUnit}`,
          side: 'right',
          cells: estimates.map(({ value }) => format.signed(value)),
        },
        { heading: 'its interval', side: 'right', cells: estimates.map((one) => format.interval(one)) },
      ];
    }),
  ];
}

/** As tables show them; what `misses` may still meet its target by less than is worth having. */
export const WORDS: Readonly<Record<Configuration['word'], string>> = {
  meets: 'meets',
  misses: 'not, or hardly',
  undecided: 'undecided',
  'not checked': 'not checked',
  'no value': 'no value',
};

/** What is said of configurations, with their sizes, cost and means. */
export function configurationRows(sized: Sized, shown: readonly Configuration[]): RowColumn[] {
  const { sizes, targets, money, chosen } = sized;
  return [
    { heading: `cost,\n${money}`, side: 'left', cells: shown.map(({ cost }) => plain(cost)) },
    ...sizes.map(
      ({ name }, i): RowColumn => ({
        heading: name.replace(' ', '\n'),
        side: 'right',
        cells: shown.map(({ values }) => String(values[i])),
      }),
    ),
    ...targets.map((target, i): RowColumn => {
      const format = formatFor(
        target,
        shown.flatMap(({ means }) => (means[i] ? [means[i]] : [])),
      );
      const cells = shown.map(({ means }) => (means[i] ? format.value(means[i].value) : 'no value'));
      return { heading: `${target.name},\n${target.shown.unit}`, side: 'right', cells };
    }),
    {
      heading: 'check',
      side: 'left',
      cells: shown.map((one) => (one === chosen ? `${WORDS[one.word]}, chosen` : WORDS[one.word])),
    },
  ];
}

/** More than so many rows say no more. */
const MOST_ROWS = 12;

/** The cheapest found for each level of the first target's measure; thinned out where there are many. */
export function tradeOff({ configurations, chosen }: Sized): Configuration[] {
  const all = configurations.filter((one) => one.frontier || one === chosen);
  if (all.length <= MOST_ROWS) return all;
  const kept = new Set(
    Array.from({ length: MOST_ROWS }, (_, i) => Math.round((i * (all.length - 1)) / (MOST_ROWS - 1))),
  );
  return all.filter((one, i) => kept.has(i) || one === chosen);
}
