import { expect, it } from 'vitest';
import { stockCost, stockMeasures } from '../../../src/line/supply/stock-measures.ts';
import { StockTally } from '../../../src/line/supply/stock-tally.ts';

const tally = (given: Partial<StockTally>) => Object.assign(new StockTally(), given);
const spec = { name: 'frame', onHand: 4 };

it('counts between two moments', () => {
  const from = tally({ taken: 5, late: 1, outSeconds: 10, onHandSeconds: 100, cycles: 1, discovered: 2 });
  const to = tally({
    taken: 25,
    late: 6,
    refused: 5,
    outSeconds: 30,
    onHandSeconds: 900,
    cycles: 5,
    shortCycles: 1,
    waitedSeconds: 50,
  });
  expect(stockMeasures(spec, from, { ...to, discovered: 3, found: 4, copy: to.copy }, 100)).toMatchObject({
    ...{
      out_share: 0.2,
      fill_rate: 15 / 25,
      cycle_service_level: 0.75,
      mean_on_hand_pieces: 8,
      unsound_pieces: 5,
      mean_waiting_pieces: 0.5,
      mean_wait_s: 50 / 25,
    },
    ...{ purchase_cost: null, holding_cost: null },
  });
});

it('counts as short what is waited for at the end, and not what was at the start', () => {
  // 8 at once, 4 late of which 3 waited from before, and 2 wait at the end: 3 of 11 were asked for in vain.
  const [from, to] = [tally({ owed: 3 }), tally({ taken: 12, late: 4, owed: 2 })];
  expect(stockMeasures({ ...spec, perShort: 2 }, from, to, 100)).toMatchObject({
    ...{ fill_rate: 8 / 11, shortage_cost: 6 },
  });
  // Those that waited turned to a stand-in.
  expect(stockMeasures(spec, from, tally({ taken: 5 }), 100).fill_rate).toBe(1);
});

it('gives no share of nothing, and a cost of 0 where other prices are named', () => {
  const none = stockMeasures({ ...spec, price: 3 }, tally({}), tally({}), 100);
  expect(none).toMatchObject({
    fill_rate: null,
    cycle_service_level: null,
    holding_cost: 0,
    purchase_cost: 0,
  });
});

it('takes the cost of a day for each piece on hand', () => {
  const measures = stockMeasures(
    { ...spec, holding: 0.5 },
    tally({}),
    tally({ onHandSeconds: 86_400 * 6 }),
    100,
  );
  expect(measures.holding_cost).toBe(3);
});

it('costs so much for each piece that was not on hand, and all costs together are what the stock cost', () => {
  const spent = tally({ taken: 20, late: 3, refused: 2, purchase: 80, ordering: 12, expedite: 4 });
  // 100 pieces on hand for a day in all.
  const kept = { ...spent, onHandSeconds: 100 * 86_400, copy: spent.copy };
  const found = stockMeasures({ ...spec, price: 4, holding: 0.5, perShort: 7 }, tally({}), kept, 86_400);
  expect(found).toMatchObject({ shortage_cost: 35, holding_cost: 50 });
  expect(stockCost(found)).toBe(80 + 12 + 4 + 50 + 35);
  expect(stockCost(stockMeasures(spec, tally({}), kept, 86_400))).toBeUndefined();
});
