import { expect, it } from 'vitest';
import { estimatedStocks } from '../../src/experiment/stock-estimates.ts';
import { baseStockFill } from '../../src/statistics/inventory.ts';
import { small } from '../line/small-line.ts';

it('tells for each policy the fill rate of stocks as it keeps them', () => {
  // One piece every 10 s in the ideal line, 100 s of lead time: a mean of 10 over it.
  const scenario = small(
    '100 s',
    `stock:
  blank: { on-hand: 9, up-to: 9, lead-time: 100 s, when-short: backorders }
  never: { on-hand: 9 }
stations:
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: assemble, buffer: 2, takes: [never], cycle: 1 s, fits: [], misfit: scrap, to: good }
policies:
  as it is: []
  more: [{ do: keep, stock: blank, on-hand: 14, up-to: 14 }]`,
  );
  const found = estimatedStocks(scenario, scenario.policies);
  expect(found['as it is']!.blank!.fill).toBeCloseTo(baseStockFill(9, 10), 12);
  expect(found.more!.blank!.fill).toBeCloseTo(baseStockFill(14, 10), 12);
  expect(found.more!.never!.fill).toBeNull();
});
