import type { Scenario } from '../../../scenario/scenario.ts';
import { gainsOn, times } from '../gains.ts';
import type { Source } from '../source.ts';

/** What the thickness of the sheet varies by, from delivery to delivery and from sheet to sheet. */
export function thicknessSources(scenario: Scenario): Source[] {
  return scenario.stations.flatMap((station) => {
    const sheet =
      station.does === 'form' ? scenario.stocks.find(({ name }) => name === station.takes) : undefined;
    if (!sheet?.thickness) return [];
    const gains = gainsOn('thickness', station.name, scenario);
    return [
      { name: 'thickness by lot', of: times(gains, sheet.thickness.lotSd) },
      { name: 'thickness by sheet', of: times(gains, sheet.thickness.ownSd) },
    ];
  });
}
