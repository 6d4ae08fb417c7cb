import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { TwinKey } from '../experiment/twin-measures.ts';
import type { Twins } from '../experiment/twins.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { percentLevel } from './cells.ts';
import { durationText } from './duration.ts';
import { formatOf } from './format.ts';
import { listed } from './words.ts';

/** A measure of policies, against twins or not. */
interface Compared {
  readonly measure: {
    readonly key: string;
    readonly shown: { readonly unit: string; readonly factor: number };
  };
  readonly rows: readonly { readonly policy: string; readonly estimate: Estimate }[];
}

/**
 * The rows of one measure, and how its numbers are written; undefined where no run gives a value.
 * @param bound a policy that nobody can follow, and which is therefore neither the least nor the most
 */
function found(
  measures: readonly Compared[],
  key: TwinKey | 'throughput_per_h',
  bound: string | null = null,
) {
  const compared = measures.find(({ measure }) => measure.key === key);
  if (compared === undefined) return undefined;
  const format = formatOf(compared);
  const told = (policy: string) => {
    const estimate = compared.rows.find((row) => row.policy === policy)?.estimate;
    if (estimate === undefined) return undefined;
    const interval = estimate.lower === null ? '' : ` (${format.interval(estimate)})`;
    return `${format.value(estimate.value)} ${format.unit}${interval}`;
  };
  const rows = compared.rows.filter(({ policy }) => policy !== bound);
  if (rows.length === 0) return undefined;
  const byMean = rows.sort((a, b) => a.estimate.value - b.estimate.value);
  const [least, most] = [byMean[0]!, byMean.at(-1)!];
  return { told, least, most, differ: least.estimate.value !== most.estimate.value };
}

/** What came over the line under a policy, and when in the mean. */
function whatHit(twins: Twins, policy: string): string {
  const { shades } = twins.curves.find((curve) => curve.policy === policy)!;
  if (shades.length === 0) return 'No disturbance came in every run.';
  const each = shades.map(({ name, from, to }) => `${name} (${durationText(from)} to ${durationText(to)})`);
  return `What hit the line: ${listed(each)}, mean times since the start of a run under ${policy}.`;
}

function cost({ measures }: Twins, policy: string): string[] {
  const lost = found(measures, 'output_lost_parts')?.told(policy);
  const before = found(measures, 'undisturbed_throughput_per_h')?.told(policy);
  const scrap = found(measures, 'scrap_caused_parts')?.told(policy);
  if (lost === undefined || before === undefined) return [];
  const scrapped = scrap === undefined ? '' : `, and scrapped ${scrap} more`;
  return [
    `What it cost: undisturbed, ${policy} makes ${before}; the disturbances took ${lost} of it in a run${scrapped}.`,
  ];
}

/** Who made most in spite of it, by the means alone: who loses least may be one who makes little anyway. */
function whoRecovered({ measures }: Twins, comparison: Comparison): string[] {
  const made = found(comparison.measures, 'throughput_per_h', comparison.bound);
  const lost = found(measures, 'output_lost_parts');
  if (made === undefined || lost === undefined || !made.differ) return [];
  const making = ({ policy }: { readonly policy: string }) =>
    `${policy}, ${made.told(policy)}, with ${lost.told(policy)} lost against its own undisturbed run`;
  const recovery = found(measures, 'time_to_recover_s', comparison.bound);
  const scrap = found(measures, 'scrap_caused_parts', comparison.bound);
  const besides = [
    ...(recovery?.differ
      ? [`${recovery.least.policy} was back soonest, after ${recovery.told(recovery.least.policy)}`]
      : []),
    ...(scrap?.differ
      ? [`${scrap.least.policy} scrapped fewest more, ${scrap.told(scrap.least.policy)}`]
      : []),
  ];
  return [
    `Who recovered, by the means: most was made under ${making(made.most)}; least under ${making(made.least)}.` +
      (besides.length > 0 ? ` Of all, ${listed(besides)}.` : ''),
  ];
}

/** What the disturbances cost in a few sentences, for somebody who has not read the scenario. */
export function twinStory(twins: Twins, comparison: Comparison): string[] {
  const { baseline } = comparison;
  const intervals =
    twins.seeds > 1
      ? [
          `In brackets: ${percentLevel(LEVEL)} % intervals of the means; where those of two policies overlap, the order may be chance.`,
        ]
      : [];
  return [
    whatHit(twins, baseline),
    ...cost(twins, baseline),
    ...whoRecovered(twins, comparison),
    ...intervals,
  ];
}
