import type { Scenario } from '../../../scenario/scenario.ts';
import { gainsOn, times } from '../gains.ts';
import type { Source } from '../source.ts';

/** What the settings of forming vary by from cycle to cycle. */
export function settingSources(scenario: Scenario): Source[] {
  return scenario.stations.flatMap((station) =>
    station.does === 'form'
      ? (station.settings ?? []).map(({ name, cycleSd }) => ({
          name: `${name} by cycle`,
          of: times(gainsOn(name, station.name, scenario), cycleSd?.value ?? 0),
        }))
      : [],
  );
}
