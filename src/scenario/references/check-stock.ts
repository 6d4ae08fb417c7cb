import { takenBy } from '../stations.ts';
import type { StockSpec } from '../stocks.ts';
import type { Checker } from './checker.ts';

/** What a stock says of itself that matters only to stations that do this with it. */
const MATTERS = {
  thickness: 'form',
  shrinkage: 'form',
  features: 'assemble',
} as const;

/** Whether somebody goes by what a stock says of itself. One that nobody takes may yet be put to use. */
export function checkStock(check: Checker, stock: StockSpec): void {
  const takers = check.raw.stations.filter((station) => takenBy(station).includes(stock.name));
  if (takers.length === 0) return;
  for (const key of Object.keys(MATTERS) as (keyof typeof MATTERS)[]) {
    const does = MATTERS[key];
    if (stock[key] === undefined || takers.some((station) => station.does === does)) continue;
    check.say(
      ['stock', stock.name, key],
      `it matters only where a station does ${does} with "${stock.name}", but "${takers[0]!.name}" does ${takers[0]!.does}; take it out`,
    );
  }
}
