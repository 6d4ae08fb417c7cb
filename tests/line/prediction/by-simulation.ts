import { observe } from '../../../src/experiment/observe.ts';
import { DimensionModel } from '../../../src/line/prediction/model.ts';
import { single } from '../../../src/line/prediction/predict-feature.ts';
import { shareWithin } from '../../../src/line/prediction/within.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { expectMean } from '../../outside-checks/by-simulation.ts';

/**
 * Holds mean, variance and share outside the limits of a feature, as predicted, against the line itself. What differs from run to
 * run counts: each run gives its mean and its mean square distance from the predicted mean.
 */
export function expectPredicted(
  scenario: Scenario,
  names: readonly string[],
  runs: number,
  sharp = 0.1,
): void {
  const model = new DimensionModel(scenario);
  const seen = Array.from({ length: runs }, (_, i) => observe(scenario, i + 1));
  for (const name of names) {
    const of = single(name);
    const spreads = seen.map(({ features }) => features.get(name)!.values.spread()!);
    const mean = model.mean(of);
    expectMean(
      spreads.map((it) => it.mean),
      mean,
      sharp,
      `mean of ${name}`,
    );
    expectMean(
      spreads.map((it) => it.variance + (it.mean - mean) ** 2),
      model.sd(of) ** 2,
      sharp,
      `variance of ${name}`,
    );
    const { limits } = scenario.parts[0]!.features.find((feature) => feature.name === name)!;
    if (!limits) continue;
    expectMean(
      seen.map(({ features }) => features.get(name)!.outside / features.get(name)!.values.count),
      1 - shareWithin([limits], model.conditions([of])),
      sharp,
      `share of ${name} outside`,
    );
  }
}
