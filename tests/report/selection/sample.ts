import type { Selection } from '../../../src/experiment/selection/select.ts';
import { sequential } from '../../../src/experiment/selection/sequential.ts';
import type { SelectionSettings } from '../../../src/experiment/selection/settings.ts';
import { twoStage } from '../../../src/experiment/selection/two-stage.ts';
import { MEASURES } from '../../../src/line/measures.ts';
import { SETTINGS, valuesAbout } from '../../experiment/selection/made-up.ts';
import { outcome } from '../fake.ts';

export const POLICIES = ['carry <on>', 'retune', 'match'];

/** A choice among made-up values about these means. */
export function sampleSelection(
  changed: Partial<SelectionSettings> = {},
  means: readonly number[] = [20, 23, 22],
  own = 2,
): Selection {
  const settings = { ...SETTINGS, ...changed };
  const all = valuesAbout(means, 2000, own);
  const standing = (settings.procedure === 'sequential' ? sequential : twoStage)(all, settings);
  const runsOf = (policy: number) => standing.out.find((one) => one.policy === policy)?.runs ?? standing.runs;
  const values = all.map((values, policy) => values.slice(0, runsOf(policy)));
  const outcomes = Array.from({ length: standing.runs }, (_, run) =>
    POLICIES.flatMap((policy, i) =>
      run < values[i]!.length ? [outcome(policy, run + 1, { throughput_per_h: values[i]![run]! })] : [],
    ),
  ).flat();
  return { policies: POLICIES, measure: MEASURES[0], settings, standing, values, outcomes };
}
