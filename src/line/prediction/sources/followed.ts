import type { Scenario } from '../../../scenario/scenario.ts';
import { addTo, responsesOf } from '../response.ts';
import type { Source } from '../source.ts';

/** What the settings of forming and the thickness of the sheet vary by, where features follow them linearly. */
export function followedSources(scenario: Scenario): Source[] {
  return responsesOf(scenario).flatMap(({ deviations, linear, curved }) =>
    deviations
      .filter(({ name }) => !curved.has(name))
      .flatMap(({ name: deviation, parts }) =>
        parts.map(({ name, sd }) => {
          const of = new Map<string, number>();
          addTo(of, linear.get(deviation)!, sd);
          return { name, of };
        }),
      ),
  );
}
