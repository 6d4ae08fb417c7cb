import { LEVEL } from '../experiment/comparison.ts';
import type { TwinKey } from '../experiment/twin-measures.ts';
import type { Twins } from '../experiment/twins.ts';
import { percentLevel } from './cells.ts';
import { durationText } from './duration.ts';
import { formatOf } from './format.ts';
import { listed } from './words.ts';

/** The rows of one measure, and how its numbers are written; undefined where no run gives a value. */
function found(twins: Twins, key: TwinKey) {
  const compared = twins.measures.find(({ measure }) => measure.key === key);
  if (compared === undefined) return undefined;
  const format = formatOf(compared);
  const { unit } = compared.measure.shown;
  const told = (policy: string) => {
    const estimate = compared.rows.find((row) => row.policy === policy)?.estimate;
    if (estimate === undefined) return undefined;
    const interval = estimate.lower === null ? '' : ` (${format.interval(estimate)})`;
    return `${format.value(estimate.value)} ${unit}${interval}`;
  };
  const byMean = [...compared.rows].sort((a, b) => a.estimate.value - b.estimate.value);
  return { told, least: byMean[0]!, most: byMean.at(-1)! };
}

/** What came over the line under a policy, and when in the mean. */
function whatHit(twins: Twins, policy: string): string {
  const { shades } = twins.curves.find((curve) => curve.policy === policy)!;
  if (shades.length === 0) return 'No disturbance came in every run.';
  const each = shades.map(({ name, from, to }) => `${name} (${durationText(from)} to ${durationText(to)})`);
  return `What hit the line: ${listed(each)}, mean times since the start of a run under ${policy}.`;
}

function cost(twins: Twins, policy: string): string[] {
  const lost = found(twins, 'output_lost_parts')?.told(policy);
  const before = found(twins, 'undisturbed_throughput_per_h')?.told(policy);
  const scrap = found(twins, 'scrap_caused_parts')?.told(policy);
  if (lost === undefined || before === undefined) return [];
  const scrapped = scrap === undefined ? '' : `, and scrapped ${scrap} more`;
  return [
    `What it cost: undisturbed, ${policy} makes ${before}; the disturbances took ${lost} of it in a run${scrapped}.`,
  ];
}

/** Who lost least, by the means alone. */
function whoRecovered(twins: Twins, policies: readonly string[]): string[] {
  const lost = found(twins, 'output_lost_parts');
  if (policies.length < 2 || lost === undefined || lost.least.estimate.value === lost.most.estimate.value)
    return [];
  const said = [
    `least was lost under ${lost.least.policy}, ${lost.told(lost.least.policy)}`,
    `most under ${lost.most.policy}, ${lost.told(lost.most.policy)}`,
  ];
  const recovery = found(twins, 'time_to_recover_s');
  const scrap = found(twins, 'scrap_caused_parts');
  if (recovery !== undefined)
    said.push(`${recovery.least.policy} was back soonest, after ${recovery.told(recovery.least.policy)}`);
  if (scrap !== undefined)
    said.push(`${scrap.least.policy} scrapped fewest more, ${scrap.told(scrap.least.policy)}`);
  return [`Who recovered, by the means: ${listed(said)}.`];
}

/** The table of what the disturbances cost in a few sentences, for somebody who has not read the scenario. */
export function twinStory(twins: Twins, policies: readonly string[]): string[] {
  const [baseline] = policies;
  const intervals =
    twins.seeds > 1
      ? [
          `In brackets: ${percentLevel(LEVEL)} % intervals of the means; where those of two policies overlap, the order may be chance.`,
        ]
      : [];
  return [
    whatHit(twins, baseline!),
    ...cost(twins, baseline!),
    ...whoRecovered(twins, policies),
    ...intervals,
  ];
}
