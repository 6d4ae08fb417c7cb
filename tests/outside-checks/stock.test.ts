import { describe, it } from 'vitest';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';

/**
 * Poisson demand of one a second for a bought-in mate: parts arrive from a station with exponential cycles, meet an
 * assembly that takes no time, and are scrapped when no mate is there. So the scrap rate is the share of lost demand.
 */
function lostSales(onHand: number, reorderAt: number, order: number, leadTime: string, length = '6 h') {
  return scenarioOf(
    '10 min',
    length,
    `
stock:
  blank: { unlimited: true }
  mate: { on-hand: ${onHand}, reorder-at: ${reorderAt}, order: ${order}, lead-time: ${leadTime} }
stations:
  demand:
    does: work
    takes: blank
    cycle: { distribution: exponential, mean: 1 s }
    to: serving
  serving:
    does: assemble
    buffer: unlimited
    takes: [mate]
    without-mates: scrap
    cycle: 0 s
    fits: []
    misfit: scrap
    to: good`,
  );
}

describe('lost sales by simulation', { timeout: 60_000 }, () => {
  // I04: one for one ordering, (S-1,S). Lost share = Erlang's loss formula at offered load demand x lead time, whatever
  // the law of the lead time. A. K. Erlang (1917); for stock: W. Karush (1957), S. A. Smith (1977).
  describe.each([
    [2, 3, 4 / 19],
    [5, 5, 0.284868],
    [8, 12, 0.0514064],
  ])('with %d in lead time on average and a base stock of %d', (load, base, loss) => {
    it.each([
      ['constant', `${load} s`],
      ['exponential', `{ distribution: exponential, mean: ${load} s }`],
    ])("loses Erlang's share when the lead time is %s", (_law, leadTime) => {
      const outcomes = runsOf(lostSales(base, base - 1, 1, leadTime));
      expectMean(
        outcomes.map(({ measures }) => measures.scrap_rate!),
        loss,
        loss < 0.1 ? 0.025 : 0.01,
      );
    });
  });

  // I08: (s,Q) = (4,12), 10 demands and 2 deliveries in a unit of time, one order out at a time: out of stock for
  // 0.167318 of the time, and by Poisson arrivals the same share of demand is lost. G. Hadley and T. M. Whitin (1963),
  // Analysis of Inventory Systems (citation from memory); solved as a Markov chain. The unit of time is 10 s here.
  it('(s,Q) ordering is out of stock, and loses demand, as its Markov chain says', () => {
    const outcomes = runsOf(lostSales(16, 4, 12, '{ distribution: exponential, mean: 5 s }', '12 h'));
    expectMean(
      outcomes.map(({ stockOutShares }) => stockOutShares.mate!),
      0.167318,
      0.015,
    );
    expectMean(
      outcomes.map(({ measures }) => measures.scrap_rate!),
      0.167318,
      0.015,
    );
  });
});
