import type { Scenario } from '../../../scenario/scenario.ts';
import { leansOf, mixedSources } from '../mixture.ts';
import type { Source } from '../source.ts';

/** What each part adds to each feature by itself. */
export function ownSources({ parts }: Scenario): Source[] {
  return parts.flatMap(({ features, correlations }) =>
    mixedSources(
      'own',
      features.map(({ name, ownSd }) => ({ dimension: name, name, sd: ownSd })),
      leansOf('own', correlations),
    ),
  );
}
