import type { SelectionSettings } from '../../../src/experiment/selection/settings.ts';
import type { Values } from '../../../src/experiment/selection/standing.ts';
import { wobble } from '../../report/fake.ts';

export const SETTINGS: SelectionSettings = {
  procedure: 'sequential',
  better: 'higher',
  worth: 1,
  confidence: 0.95,
  firstStage: 5,
  most: 400,
};

/** Values about each mean that share most of their luck, as those of policies under the same seeds do. */
export const valuesAbout = (means: readonly number[], runs: number, own = 2): Values =>
  means.map((mean, policy) =>
    Array.from({ length: runs }, (_, run) => mean + 5 * wobble(99, run) + own * wobble(policy, run)),
  );
