import type { Scenario } from '../../../scenario/scenario.ts';
import type { Source } from '../source.ts';

/** What each part adds to each feature by itself. */
export function ownSources({ parts }: Scenario): Source[] {
  return parts.flatMap(({ features }) =>
    features.map(({ name, ownSd }) => ({ name: 'own', of: new Map([[name, ownSd]]) })),
  );
}
