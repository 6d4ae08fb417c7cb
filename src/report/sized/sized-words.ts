import type { Configuration, Sized } from '../../experiment/sizing/sized.ts';
import type { Target } from '../../experiment/sizing/target.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { percentLevel } from '../cells.ts';
import { fixed, formatOf } from '../format.ts';
import { counted, listed } from '../words.ts';

/** Digits of money and of targets: what was written, without what binary arithmetic adds. */
export const plain = (value: number): string => fixed(Number(value.toPrecision(6)), decimalsOf(value));

function decimalsOf(value: number): number {
  const text = String(Number(value.toPrecision(6)));
  return text.includes('e') ? 0 : (text.split('.')[1] ?? '').length;
}

export const signedPlain = (value: number): string => (value > 0 ? `+${plain(value)}` : plain(value));

/** In the unit it is shown in. */
const shown = (value: number, { shown: { factor, unit } }: Target): string =>
  `${plain(value * factor)} ${unit}`;

/** `at least 150 good /h`. */
export const limitOf = (target: Target): string =>
  `${target.better === 'higher' ? 'at least' : 'at most'} ${shown(target.value, target)}`;

export const targetText = (target: Target): string => `${target.name} ${limitOf(target)}`;

const targetsText = ({ targets }: Sized): string => listed(targets.map(targetText));

/** How the means of a target are written: all in one way. */
export function formatFor(target: Target, estimates: readonly Estimate[]) {
  const rows = estimates.map((estimate) => ({ estimate }));
  return formatOf({ measure: target, rows: rows.length > 0 ? rows : [{ estimate: NOTHING }] });
}
const NOTHING: Estimate = { value: 1, lower: null, upper: null, level: 0.95, runs: 0, method: '' };

/** `buffer 4 and fitters 2`. */
export const sizesText = ({ sizes }: Sized, { values }: Configuration): string =>
  listed(sizes.map(({ name }, i) => `${name} ${values[i]}`));

export const costText = ({ money }: Sized, cost: number): string => `${plain(cost)} ${money}`;

/** By how much a target must be met to count, in words. */
const worthText = ({ targets }: Sized): string =>
  targets.length === 1
    ? shown(targets[0]!.worth, targets[0]!)
    : listed(targets.map((target) => `${shown(target.worth, target)} in ${target.name}`));

const surely = ({ sure }: Sized): string => `With probability at least ${percentLevel(sure)} %`;

const numbered = (count: number): string => (count >= 1e6 ? plain(count) : String(count));

const extent = ({ whole, possible, configurations: { length } }: Sized): string =>
  whole && length === possible
    ? `All ${counted(length, 'possible choice')} of sizes were simulated`
    : `${length} of ${numbered(possible)} possible choices of sizes were simulated; nothing is said of the others`;

/** Those that cost less than the choice, by what is said of them. */
function cheaperThan({ configurations }: Sized, { cost }: Configuration) {
  const cheaper = configurations.filter((one) => one.cost < cost);
  const of = (...words: readonly Configuration['word'][]) =>
    cheaper.filter(({ word }) => words.includes(word)).length;
  return { misses: of('misses'), open: of('undecided', 'not checked'), without: of('no value') };
}

/** What is vouched for of those that cost less. */
function cheaperText(sized: Sized, chosen: Configuration): string {
  const { misses, open, without } = cheaperThan(sized, chosen);
  const several = sized.targets.length > 1;
  const none =
    misses === 0
      ? ''
      : misses === 1
        ? `, and the cheaper one that was checked does not meet ${several ? 'them all' : 'it'} by ${worthText(sized)} or more`
        : `, and none of the ${misses} cheaper ones that were checked meets ${several ? 'them all' : 'it'} by ${worthText(sized)} or more`;
  const left = open > 0 ? `. ${counted(open, 'cheaper one is', 'cheaper ones are')} left undecided` : '';
  const no =
    without > 0
      ? `. Of ${counted(without, 'cheaper one')} nothing is said, since a run gave no value of the target`
      : '';
  const around =
    sized.neighboursChecked && misses > 1
      ? '. Every cheaper one a step off, along one size or two, is among them'
      : '';
  return `${none}${around}${left}${no}`;
}

/** What was chosen and what it costs. */
function choiceText(sized: Sized): string {
  const { chosen, apparent, apparentMeets } = sized;
  if (chosen)
    return (
      `${cheaperThan(sized, chosen).open > 0 ? 'Enough, though what costs less may be so, too' : 'Enough at least cost'}: ` +
      `${sizesText(sized, chosen)}, for ${costText(sized, chosen.cost)}.`
    );
  if (apparent && apparentMeets)
    return `Nothing is confirmed. What seems enough by the first runs: ${sizesText(sized, apparent)}, for ${costText(sized, apparent.cost)}.`;
  if (apparent)
    return `No choice of sizes that was simulated is shown to meet ${targetsText(sized)}. The nearest: ${sizesText(sized, apparent)}, for ${costText(sized, apparent.cost)}.`;
  return 'The runs ended before any choice of sizes had its first runs, so nothing is said.';
}

/** What holds of it, how surely, and among which. */
function guaranteeText(sized: Sized): string | null {
  const { chosen, configurations, targets, spent } = sized;
  const one = targets.length === 1;
  if (chosen)
    return `${surely(sized)}, it meets ${targetsText(sized)} in the mean${cheaperText(sized, chosen)}.`;
  if (configurations.length === 0) return null;
  if (configurations.every(({ word }) => word === 'misses'))
    return `${surely(sized)}, none of them meets ${one ? 'the target' : 'all targets'} by ${worthText(sized)} or more.`;
  const open = configurations.filter(({ word }) => word === 'undecided' || word === 'not checked').length;
  const without = configurations.filter(({ word }) => word === 'no value').length;
  return [
    ...(spent === null ? [] : ['The runs ended before the check did, so nothing is vouched for.']),
    ...(open > 0 ? [`${counted(open, 'choice')} of sizes left undecided.`] : []),
    ...(without > 0 ? [`Of ${counted(without, 'choice')} a run gave no value of the target.`] : []),
  ].join(' ');
}

/** What is odd about the choice. */
function marginsText({ chosen, sizes }: Sized): string | null {
  if (!chosen) return null;
  if (chosen.point.every((x) => x === 0))
    return 'The smallest of all sizes meet the target already; smaller ones were not looked at.';
  const largest = sizes.filter(({ count }, i) => count > 1 && chosen.point[i] === count - 1);
  return largest.length > 0
    ? `As large as was looked at: ${listed(largest.map(({ name }) => name))}. Larger might be cheaper over all.`
    : null;
}

/** The same whether runs or time were over, since runs as many give the same report again. */
const spentText = ({ runs }: Sized): string =>
  `It ended after ${counted(runs, 'run')}, as many as were allowed or as there was time for; --at-most and --within allow more.`;

/** What is said of the choice, a sentence or two each. */
export function sizedVerdict(sized: Sized): string[] {
  const some = sized.configurations.length > 0;
  const found = [
    choiceText(sized),
    guaranteeText(sized),
    some ? `${extent(sized)}.` : null,
    marginsText(sized),
  ];
  if (sized.spent !== null) found.push(spentText(sized));
  return found.filter((text) => text !== null && text !== '') as string[];
}

/** Everything the numbers rest on. */
export function sizedNotes(sized: Sized): string[] {
  const { first, look, whole, runs, policy, sure, targets } = sized;
  const seeds = `${counted(runs, 'run')} in all, under policy ${policy}.`;
  const how = whole
    ? `Each choice had ${first} runs, and more where these did not decide.`
    : `Each choice that the search looked at had ${first} runs; what is said of it rests on others, under fresh seeds.`;
  const closer = look?.fresh
    ? `The closer look is at ${look.runs} runs each that nothing was chosen by.`
    : 'There was no closer look: what a step does is told by the first runs, by which sizes were looked for.';
  return [
    sized.configurations.length > 0 ? `${seeds} ${how} ${closer}` : seeds,
    `Targets that are met by less than ${worthText(sized)} may be taken for missed. All that is said of meeting and missing holds together (Bonferroni), for values of runs that are near normal.`,
    `Intervals of a step hold together at ${percentLevel(sure)} %${targets.length > 1 ? ', over all targets' : ''}. Points of the trade-off are means of ${first} runs and are not vouched for.`,
    'This is a plan on paper: who may work at a machine, and how many it takes to do so safely, is for risk assessment, local codes and competent people.',
  ];
}
