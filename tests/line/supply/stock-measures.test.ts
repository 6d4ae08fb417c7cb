import { expect, it } from 'vitest';
import { stockMeasures } from '../../../src/line/supply/stock-measures.ts';
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
  });
  expect(stockMeasures(spec, from, { ...to, discovered: 3, found: 4, copy: to.copy }, 100)).toMatchObject({
    ...{
      out_share: 0.2,
      fill_rate: 15 / 25,
      cycle_service_level: 0.75,
      mean_on_hand_pieces: 8,
      unsound_pieces: 5,
    },
    ...{ purchase_cost: null, holding_cost: null },
  });
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
