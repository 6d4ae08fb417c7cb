import type { Scenario } from '../../../scenario/scenario.ts';
import type { Source } from '../source.ts';

/** What the parts of one sheet, and of one delivery of sheet, share; without forming there is no sheet. */
export function sheetSources({ parts, stations }: Scenario): Source[] {
  if (!stations.some(({ does }) => does === 'form')) return [];
  return parts.flatMap(({ features }) =>
    features.flatMap(({ name, sheetSd, lotSd }) => [
      { name: 'sheet', of: new Map([[name, sheetSd]]) },
      { name: 'lot', of: new Map([[name, lotSd]]) },
    ]),
  );
}
