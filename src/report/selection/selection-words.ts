import { mean } from 'simple-statistics';
import { LEVEL } from '../../experiment/comparison.ts';
import type { Selection } from '../../experiment/selection/select.ts';
import { MOST_SEEDS } from '../../scenario/limits.ts';
import { signOf } from '../../statistics/comparing/better.ts';
import { type Estimate, possible } from '../../statistics/estimate.ts';
import { meanInterval } from '../../statistics/mean-interval.ts';
import { percentLevel } from '../cells.ts';
import { type Format, fixed, formatOf } from '../format.ts';
import { counted, listed } from '../words.ts';

/** `throughput, good /h (higher is better)`. */
export const measureOf = ({ measure }: Selection): string =>
  `${measure.name}, ${measure.shown.unit} (${measure.better} is better)`;

/** One policy, with what its runs came to in the unit of the measure's key. */
export interface SelectionRow {
  readonly policy: string;
  /** Runs that counted. */
  readonly runs: number;
  /** Over all of them: runs under other seeds than those of a policy that had fewer. */
  readonly mean: number;
  /** How far behind it was under the same seeds, when it was left out or in the end; null for the one ahead. */
  readonly behind: number | null;
  /** Over the first stage alone, whose length does not depend on what came of it. */
  readonly first: Estimate;
  readonly standing: 'chosen' | 'left out' | 'not chosen' | 'ahead' | 'undecided';
}

const firstOf = (values: readonly number[], runs: number, measure: Selection['measure']): Estimate =>
  possible(meanInterval(values.slice(0, runs), LEVEL), { least: 0, ...measure });

export function rowsOf(selection: Selection): SelectionRow[] {
  const { policies, measure, settings, standing, values } = selection;
  const { how, best, out, runs } = standing;
  const standingOf = (policy: number): SelectionRow['standing'] => {
    if (out.some((one) => one.policy === policy)) return 'left out';
    if (policy === best) return how === 'most runs' ? 'ahead' : 'chosen';
    return how === 'most runs' ? 'undecided' : 'not chosen';
  };
  return policies.map((policy, i) => ({
    ...{ policy, runs: values[i]!.length, mean: mean([...values[i]!]), standing: standingOf(i) },
    behind:
      out.find((one) => one.policy === i)?.behind ??
      (i === best ? null : behindOf(selection, i, best!, runs)),
    first: firstOf(values[i]!, settings.firstStage, measure),
  }));
}

/**
 * Each policy's mean less the best of the others', where the procedure gives that an interval: all of them hold together with
 * the probability stated. B. L. Nelson and F. J. Matejcik (1995), Using common random numbers for indifference-zone selection
 * and multiple comparisons in simulation, Management Science 41, 1935-1945 (from memory).
 */
export function besideOf({ settings, standing, values }: Selection): Estimate[] {
  if (standing.how !== 'best mean') return [];
  const { worth, confidence: level, better } = settings;
  const sign = signOf(better);
  const means = values.map((own) => sign * mean([...own]));
  return means.map((own, i) => {
    const lead = own - Math.max(...means.filter((_, other) => other !== i));
    const ends = [sign * Math.min(0, lead - worth), sign * Math.max(0, lead + worth)] as const;
    const [lower, upper] = [Math.min(...ends), Math.max(...ends)];
    return { ...{ value: sign * lead, lower, upper, level, runs: standing.runs }, method: 'with the best' };
  });
}

/** How the numbers of a choice are written. */
export function formatOfSelection({ measure, settings, values }: Selection): Format {
  const rows = values.map((own) => ({ estimate: firstOf(own, settings.firstStage, measure) }));
  return formatOf({ measure, rows });
}

/** Nothing for the one ahead. */
export const behindText = ({ behind }: SelectionRow, { value }: Format): string =>
  behind === null ? '' : value(behind);

/** Without the digits that binary arithmetic adds. */
const plain = (value: number) => String(Number(value.toPrecision(10)));

const shareOf = ({ settings }: Selection) => `${percentLevel(settings.confidence)} %`;

function worthText(selection: Selection): string {
  const { measure, settings } = selection;
  return `${plain(settings.worth * measure.shown.factor)} ${formatOfSelection(selection).differenceUnit}`;
}

/** What came of it, and what is stated of it, in sentences. */
export function conclusionOf(selection: Selection): string[] {
  const { policies, measure, standing } = selection;
  const { how, left, runs } = standing;
  const best = policies[standing.best!]!;
  if (how === 'most runs') return undecided(selection);
  const share = shareOf(selection);
  const worth = worthText(selection);
  const stated =
    `If the best policy leads every other by ${worth} or more in ${measure.name}, this finds it with a ` +
    `probability of ${share} or more.`;
  if (how === 'best mean')
    return [
      `${best} is chosen after ${counted(runs, 'run')} of each policy. ${stated} However small the lead, ` +
        `what is chosen is behind the best by ${worth} at most, with the same probability.`,
    ];
  const small =
    'Where it leads by less, another may be as good, or better by less than that; of that nothing is stated.';
  const others = left.filter((i) => i !== standing.best).map((i) => policies[i]!);
  if (how === 'level')
    return [
      `${best} is chosen after ${counted(runs, 'run')}, the first of those that came to the same: ` +
        `${listed(others)} had exactly its mean. ${stated} ${small}`,
    ];
  return [`${best} is chosen after ${counted(runs, 'run')}. ${stated} ${small}`];
}

function undecided(selection: Selection): string[] {
  const { policies, settings, standing } = selection;
  const { left, runs, needed } = standing;
  const format = formatOfSelection(selection);
  const rows = rowsOf(selection);
  const behind = left
    .filter((i) => i !== standing.best)
    .map((i) => `${policies[i]} is ${format.value(rows[i]!.behind!)} behind`);
  const sequential = settings.procedure === 'sequential';
  return [
    `Undecided after ${counted(runs, 'run')} of each policy${sequential ? ' that is left' : ''}, the most that --at-most allowed. ` +
      `${policies[standing.best!]} is ahead; ${listed(behind)} (${format.differenceUnit}). Nothing is stated of who is the best.`,
    `By the spread of the first ${settings.firstStage} runs it ends ${sequential ? 'at the latest ' : ''}` +
      `with ${counted(needed!, 'run')} of each${needed! <= MOST_SEEDS ? `: --at-most ${needed}` : ', which are too many'}. A larger --worth needs fewer.`,
  ];
}

/** Mean of the paired differences over the first runs, above 0 where the other is better. */
const behindOf = ({ values, settings }: Selection, policy: number, other: number, runs: number): number =>
  signOf(settings.better) *
  mean(values[other]!.slice(0, runs).map((value, run) => value - values[policy]![run]!));

/** Two numbers with so many decimals that they can be told apart, if a few more do it. */
function apart(one: number, other: number, { measure }: Selection, { decimals }: Format): [string, string] {
  const written = (places: number) =>
    [one, other].map((value) => fixed(value * measure.shown.factor, places));
  const enough = [0, 1, 2, 3].map((more) => written(decimals + more));
  return (enough.find(([a, b]) => a !== b) ?? enough[0]!) as [string, string];
}

/** Who went when, and by whom. */
export function courseOf(selection: Selection): string[] {
  const { policies, standing } = selection;
  const format = formatOfSelection(selection);
  return standing.out.map(({ policy, runs, by, behind, allowed }) => {
    const [far, most] = apart(behind, allowed, selection, format);
    return (
      `After ${counted(runs, 'run')} ${policies[policy]} is left out: its mean is ${far} ${format.differenceUnit} ` +
      `behind that of ${policies[by]}; up to ${most} it would have stayed.`
    );
  });
}

/** By what it went, and what the columns are. */
export function notesOf(selection: Selection): string[] {
  const { policies, settings, outcomes } = selection;
  const { procedure, firstStage } = settings;
  const common = `${counted(outcomes.length, 'run')} of ${counted(policies.length, 'policy', 'policies')} counted, without twins; run number k of each is under seed k.`;
  const behind =
    'Behind: over all runs of a policy that counted, paired by seed; of one left out, behind the one that outdid it.';
  const beside = `To the best other: over all runs, paired by seed; these intervals hold together at ${shareOf(selection)} (Nelson and Matejcik 1995).`;
  const interval =
    `The means and their intervals are by the first ${firstStage} runs alone, under the same seeds, and each holds by itself at ` +
    `${percentLevel(LEVEL)} %: how many runs come later depends on what they give, so that an interval over all would not hold as it ` +
    `says. ${besideOf(selection).length > 0 ? beside : behind}`;
  const how =
    procedure === 'sequential'
      ? `Fully sequential (Kim and Nelson 2001): after the first ${firstStage} runs, one more of each policy that is left, and out goes a policy whose mean lies too far behind another's.`
      : `Two stages for runs that depend on each other (Clark and Yang 1986): the spread of the differences in the first ${firstStage} runs tells how many are needed of every policy; then the best mean is chosen.`;
  return [`${how} Values are taken as normal.`, interval, common];
}
