import { expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { stockEstimates } from '../../src/line/supply/stock-estimate.ts';
import { expectMean, runsOf, scenarioOf } from './by-simulation.ts';
import { STOCKS } from './cases/stocks.ts';
import { checkCases } from './check-cases.ts';

checkCases('stock theory', STOCKS);

// A. K. Erlang (1917): pieces ordered one by one as they are taken are servers; 5 of them under 4 erlangs let 55.4113 % wait.
it('a base stock of which only what is taken is ordered fills as many as Erlang’s delay formula says, as check does', () => {
  const scenario = scenarioOf(
    '2000 s',
    '20000 s',
    `
stock: { mate: { on-hand: 5, up-to: 5, lead-time: { distribution: exponential, mean: 4 s } } }
stations:
  demand: { does: arrive, every: { distribution: exponential, mean: 1 s }, to: serving }
  serving: { does: assemble, buffer: unlimited, takes: [mate], cycle: 0 s, fits: [], misfit: scrap, to: good }`,
  );
  const fills = runsOf(scenario).map(({ stocks }) => stocks.mate!.fill_rate!);
  expectMean(fills, 1 - 0.554113, 0.02, 'fill rate');
  expect(stockEstimates(scenario, idealLine(scenario))[0]!.fill).toBeCloseTo(1 - 0.554113, 6);
});
