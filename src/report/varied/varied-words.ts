import { LEVEL } from '../../experiment/comparison.ts';
import type { FactorEffect } from '../../experiment/varied/effects.ts';
import type { Factor, Point } from '../../experiment/varied/factor.ts';
import type { Varied } from '../../experiment/varied/varied.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { percentLevel } from '../cells.ts';
import { formatOf, percent } from '../format.ts';
import { counted, listed } from '../words.ts';

/** `throughput, good /h`. */
export const measureOf = ({ measure }: Varied): string => `${measure.name}, ${measure.shown.unit}`;

/** What is varied, and over which values. */
export const factorText = ({ at, name, levels, range }: Factor): string => {
  const words = levels.map((level) => level.words);
  const values = range === null ? words.join(', ') : words.join(' to ');
  return at === null || at === name ? `${name}: ${values}` : `${name} (${at}): ${values}`;
};

/** `trimming/buffer`, or `trimming/buffer = 8`, and with two of them a cross between. */
export const togetherText = (
  varied: Varied,
  { factors, levels = null }: { factors: readonly number[]; levels?: readonly number[] | null },
): string =>
  factors
    .map((factor, i) => {
      const { name, levels: known } = varied.factors[factor]!;
      return levels === null ? name : `${name} = ${known[levels[i]!]!.words}`;
    })
    .join(' \u00d7 ');

/** `trimming/buffer = 8, forming/cycle = 9 s`. */
const pointText = ({ factors }: Varied, point: Point): string =>
  factors.map(({ name }, i) => `${name} = ${point[i]!.words}`).join(', ');

/** On which side of zero an effect surely lies. */
export function sideOf({ lower, upper }: Estimate): string {
  if (lower === null || upper === null) return 'not told';
  if (lower === 0 && upper === 0) return 'none';
  if (lower > 0) return 'above 0';
  return upper < 0 ? 'below 0' : 'undecided';
}

/** The effects that are told one by one: all of single factors, and of two together those that are surely there. */
export const tellingRows = (rows: readonly FactorEffect[]): FactorEffect[] =>
  rows.filter(
    ({ factors, effect }) => factors.length === 1 || ['above 0', 'below 0'].includes(sideOf(effect)),
  );

const share = `${percentLevel(LEVEL)} %`;

/** What an effect is, by the kind of design. */
export function effectsHeading(varied: Varied): string {
  const of = `effects on ${measureOf(varied)}`;
  switch (varied.effects.kind) {
    case 'levels':
      return `${of}: against the mean over all settings`;
    case 'linear':
      return `${of}: from the least to the most value, if straight`;
    case 'screened':
      return `${of}: from the least to the most value`;
    default:
      return `${of}: from the first to the second value`;
  }
}

function mixedNotes(varied: Varied, rows: readonly FactorEffect[]): string[] {
  const { fraction, points } = varied.design;
  if (fraction === null) return [];
  const mixed = rows.filter(({ mixedWith }) => mixedWith.length > 0);
  const together = mixed.map((row) => {
    const others = row.mixedWith.map(
      (other) => `${other.sign < 0 ? 'minus ' : ''}${togetherText(varied, other)}`,
    );
    return `${togetherText(varied, row)} holds ${listed(others)} as well`;
  });
  const of = `${points.length} of ${2 ** varied.factors.length} settings`;
  return [
    together.length === 0
      ? `By ${of} (resolution ${fraction.resolution}) each effect of one, and of two together, is told by itself; those of three and more are taken to be none.`
      : `By ${of} (resolution ${fraction.resolution}) not all can be told apart: ${together.join('; ')}. Effects of three and more together are taken to be none.`,
  ];
}

function effectNotes(varied: Varied): string[] {
  const { effects, seeds, design } = varied;
  if (effects.kind === 'none')
    return [`Some runs give no ${varied.measure.name}, so no effect can be told; vary.csv holds all runs.`];
  if (effects.kind === 'screened') {
    const paths = design.points.length / design.perPath;
    const luck =
      seeds < 2
        ? 'One seed a path does not tell luck from effects; take two or more.'
        : `matters: so large that luck alone would give as much in less than ${percentLevel(1 - LEVEL)} % of such experiments, all things varied together (F test, Bonferroni); no is not told from luck.`;
    return [
      `size: the mean of the changes whatever their sign (mu*), which luck alone keeps above zero; effect: their mean (mu); spread: their standard deviation (sigma), large where the effect bends or goes together with others. ${counted(paths, 'path')}, each under its own ${counted(seeds, 'seed')}; intervals of ${share}, each by itself, are over paths. ${luck}`,
    ];
  }
  if (seeds < 2) return ['One seed gives no interval, so no effect is told from luck.', ...mixedNotes(varied, effects.rows)]; // biome-ignore format: one line reads better
  const { rows } = effects;
  const held =
    rows.length === 1
      ? 'The interval of the effect holds'
      : `The intervals of ${rows.length === 2 ? 'both' : `all ${rows.length}`} effects hold together`;
  const bonferroni = rows.length === 1 ? '' : ", by Bonferroni's inequality";
  const left = rows.length - tellingRows(rows).length;
  const silent = left > 0 ? [`${counted(left, 'effect')} of two together ${left === 1 ? 'is' : 'are'} not told from none.`] : []; // biome-ignore format: one line reads better
  const straight =
    effects.kind === 'linear' && effects.explained !== null
      ? [
          `A plane accounts for ${percent(effects.explained)} % of how the means of settings differ; the rest is what bends, what goes together, and luck.`,
        ]
      : [];
  return [
    ...silent,
    `${held} at ${share} over seeds${bonferroni}.`,
    ...straight,
    ...mixedNotes(varied, rows),
  ];
}

/** What the intervals mean, and what the design cannot tell. */
export function variedNotes(varied: Varied): string[] {
  const { design, seeds, runs, policy } = varied;
  const under = design.kind === 'screen' ? '' : `, each under the same ${counted(seeds, 'seed')}`;
  const followed = policy === null ? '' : `, policy ${policy}`;
  return [
    ...effectNotes(varied),
    `${counted(runs, 'run')}: ${counted(design.points.length, 'setting')}${under}${followed}.`,
  ];
}

/** The best setting as the runs have it, and what that is worth. */
export function bestText(varied: Varied): string {
  const { best, design, estimates, measure } = varied;
  if (best === null) return `No run gives a value of ${measure.name}.`;
  const format = formatOf({
    measure,
    rows: estimates.flatMap((estimate) => (estimate ? [{ estimate }] : [])),
  });
  const own = estimates[best]!;
  const interval = own.lower === null ? '' : ` (${format.interval(own)})`;
  return (
    `Best mean of ${counted(design.points.length, 'setting')} as observed: ${measure.name} ${format.value(own.value)} ${format.unit}${interval} ` +
    `with ${pointText(varied, design.points[best]!)}. The best of many looks better than it is: run it again under more seeds, beside ` +
    'what you have, before it decides anything.'
  );
}
