import type { Scenario } from '../../../scenario/scenario.ts';
import type { Source } from '../source.ts';

/** What bought-in mates vary by, from delivery to delivery and from piece to piece. */
export function mateSources({ stocks }: Scenario): Source[] {
  return stocks.flatMap(({ name: stock, features }) =>
    (features ?? []).flatMap(({ name, lotSd, ownSd }) => [
      { name: `${stock} own`, of: new Map([[`${stock}.${name}`, ownSd]]) },
      { name: `${stock} lot`, of: new Map([[`${stock}.${name}`, lotSd]]) },
    ]),
  );
}
