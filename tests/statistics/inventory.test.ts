import { describe, expect, it } from 'vitest';
import {
  baseStockFill,
  baseStockFor,
  erlangDelay,
  erlangLoss,
  lotAndReorderPoint,
  newsvendor,
  normalExcess,
  normalLotFill,
  poissonLotFill,
  reorderPointByCycles,
  reorderPointByPieces,
  unitNormalLoss,
} from '../../src/statistics/inventory.ts';
import { poissonExcess, poissonUpTo } from '../../src/statistics/poisson.ts';

/** Published figures have six digits, or so many decimals. */
function expectPrinted(actual: number, printed: number): void {
  expect(Math.abs(actual / printed - 1), `${actual} against ${printed}`).toBeLessThan(1e-5);
}

describe('stock theory', () => {
  // I01: S. Nahmias, Production and Operations Analysis, chapter 5 (the newsstand); exact quantile instead of the table's.
  it('finds what to have for one period', () => {
    const it = newsvendor({ mean: 11.73, sd: 4.74 }, { short: 0.5, left: 0.15 });
    expectPrinted(it.ratio, 0.769231);
    expectPrinted(it.z, 0.736316);
    expectPrinted(it.quantity, 15.2201);
    expectPrinted(it.expectedShort, 0.636565);
    expectPrinted(it.expectedLeft, 4.1267);
  });

  // I02: W. J. Hopp and M. L. Spearman, Factory Physics, chapter 2 (base stock).
  it.each([
    [13, 0.791556],
    [14, 0.864464],
    [15, 0.916542],
    [16, 0.95126],
  ])('fills from a base stock of %d with a demand of 10 in a lead time', (level, fill) => {
    expectPrinted(baseStockFill(level, 10), fill);
  });

  // I03: the same chapter; holding costs 15, a piece short 25.
  it('finds the base stock of least cost', () => {
    expectPrinted(poissonUpTo(10, 10), 0.58304);
    expectPrinted(poissonUpTo(11, 10), 0.696776);
    expect(baseStockFor(25 / (25 + 15), 10)).toBe(11);
  });

  // I04: A. K. Erlang (1917); for stock W. Karush (1957), S. A. Smith (1977).
  it.each([
    [1, 3, 0.0625],
    [2, 3, 0.210526],
    [5, 5, 0.284868],
    [10, 10, 0.214582],
    [8, 12, 0.0514064],
  ])('loses of a load of %d on %d pieces', (load, servers, loss) => {
    expectPrinted(erlangLoss(load, servers), loss);
  });

  // A. K. Erlang (1917), standard delay tables; with one server it is the load, with two at load 1 a third.
  it.each([
    [4, 5, 0.554113],
    [0.3, 1, 0.3],
    [1, 2, 0.333333],
    [5, 5, 1],
  ])('lets of a load of %d on %d pieces so many wait', (load, servers, waits) => {
    expectPrinted(erlangDelay(load, servers), waits);
  });

  // I05: Nahmias, chapter 5 (the gourmet shop), iterated until it settles.
  it('finds lot and reorder point where pieces short cost something', () => {
    const it = lotAndReorderPoint({ demand: 200, order: 50, holding: 2, short: 25 }, { mean: 100, sd: 25 });
    expectPrinted(it.economic, 100);
    expectPrinted(it.quantity, 110.774);
    expectPrinted(it.reorderAt, 142.568);
    expectPrinted(it.expectedShort, 0.454164);
  });

  it('says so where no such lot settles', () => {
    expect(() =>
      lotAndReorderPoint({ demand: 200, order: 50, holding: 2, short: 0.1 }, { mean: 100, sd: 25 }),
    ).toThrow('did not settle');
  });

  // I06: Nahmias, chapter 5: 98 % of the cycles, and 98 % of the pieces.
  it('finds reorder points for a service wanted', () => {
    const during = { mean: 100, sd: 25 };
    expectPrinted(reorderPointByCycles(0.98, during), 151.344);
    const byPieces = reorderPointByPieces(0.98, 100, during);
    expectPrinted(byPieces, 125.531);
    expectPrinted((byPieces - 100) / 25, 1.02124);
    expect(normalExcess(byPieces, during) / 100).toBeCloseTo(0.02, 10);
    // What is still short after a whole lot more is next to nothing here, so the fill rate by lots agrees.
    expect(normalLotFill(byPieces, 100, during)).toBeCloseTo(0.98, 6);
  });

  // I07: G. Hadley and T. M. Whitin, Analysis of Inventory Systems (1963); Factory Physics, chapter 2.
  it.each([
    [2, 0.903339, 0.389209],
    [3, 0.965243, 0.139554],
    [5, 0.997219, 0.0111397],
  ])('fills from orders of 4 at %d', (reorderAt, fill, owed) => {
    expectPrinted(poissonLotFill(reorderAt, 4, 1.726), fill);
    expectPrinted(poissonExcess(reorderAt, 1.726), owed);
  });

  // I09: the standard table of the unit normal loss.
  it.each([
    [0, 0.398942],
    [0.5, 0.197797],
    [1, 0.0833155],
    [2, 0.0084907],
  ])('loses of a standard normal number beyond %d', (z, loss) => {
    expectPrinted(unitNormalLoss(z), loss);
  });
});
