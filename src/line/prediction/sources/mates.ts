import type { Scenario } from '../../../scenario/scenario.ts';
import { leansOf, mixedSources } from '../mixture.ts';
import type { Source } from '../source.ts';

/** What bought-in mates vary by, from delivery to delivery and from piece to piece. */
export function mateSources({ stocks }: Scenario): Source[] {
  return stocks.flatMap(({ name: stock, features = [], correlations }) => {
    const varying = (sd: 'ownSd' | 'lotSd') =>
      features.map((feature) => ({
        dimension: `${stock}.${feature.name}`,
        name: feature.name,
        sd: feature[sd],
      }));
    return [
      ...mixedSources(`${stock} own`, varying('ownSd'), leansOf('own', correlations)),
      ...mixedSources(`${stock} lot`, varying('lotSd'), leansOf('lot', correlations)),
    ];
  });
}
