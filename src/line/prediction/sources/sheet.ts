import type { Scenario } from '../../../scenario/scenario.ts';
import { leansOf, mixedSources } from '../mixture.ts';
import type { Source } from '../source.ts';

/** What the parts of one sheet, and of one delivery of sheet, share; without forming there is no sheet. */
export function sheetSources({ parts, stations }: Scenario): Source[] {
  if (!stations.some(({ does }) => does === 'form')) return [];
  return parts.flatMap(({ features, correlations }) => {
    const varying = (sd: 'sheetSd' | 'lotSd') =>
      features.map((feature) => ({ dimension: feature.name, name: feature.name, sd: feature[sd] }));
    return [
      ...mixedSources('sheet', varying('sheetSd'), leansOf('sheet', correlations)),
      ...mixedSources('lot', varying('lotSd'), leansOf('lot', correlations)),
    ];
  });
}
