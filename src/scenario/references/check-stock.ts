import { sparesOf } from '../spares.ts';
import { originalsOf } from '../stand-ins.ts';
import { takenBy } from '../stations.ts';
import type { StockSpec } from '../stocks.ts';
import type { Checker } from './checker.ts';

/** What a stock says of itself that matters only to stations that do this with it. */
const MATTERS = {
  thickness: 'form',
  shrinkage: 'form',
  features: 'assemble',
} as const;

/** Whether somebody takes the stock, and goes by what it says of itself. The scenario must be whole. */
export function checkStock(check: Checker, stock: StockSpec): void {
  const { stations } = check.raw;
  // What stands in for another is taken where that one is.
  const takenAs = originalsOf(stock.name, check.raw.stock);
  const takers = stations.filter((station) => takenBy(station).some((name) => takenAs.includes(name)));
  const isSpare = stations.some((station) => sparesOf(station).includes(stock.name));
  if (takers.length === 0 && !isSpare) {
    check.say(
      ['stock', stock.name],
      'nothing takes it; name it under "takes" of a station or "spare" of a breakdown, a set-up or maintenance, or take it out',
    );
  }
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
