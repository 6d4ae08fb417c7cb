import { describe, expect, it } from 'vitest';
import { idealLine } from '../../../src/line/ideal.ts';
import { stockEstimates } from '../../../src/line/supply/stock-estimate.ts';
import { small } from '../small-line.ts';

/** One mate a second is wanted. */
function estimate(mate: string, serving = '') {
  const scenario = small(
    '1 h',
    `
stock:
  mate: { ${mate} }
stations:
  demand: { does: arrive, every: 1 s, to: serving }
  serving: { does: assemble, buffer: unlimited, takes: [mate], cycle: 0 s, fits: [], misfit: scrap${serving}, to: good }`,
  );
  return stockEstimates(scenario, idealLine(scenario))[0]!;
}

/** Published figures have six digits. */
const printed = (value: number) => expect.closeTo(value, 5);

describe('the first estimate of a stock', () => {
  // I02: Factory Physics, chapter 2. One for one the law of the lead time does not matter.
  it('under one for one ordering is the chance that less is wanted in a lead time', () => {
    for (const leadTime of ['10 s', '{ distribution: exponential, mean: 10 s }'])
      expect(estimate(`on-hand: 15, up-to: 15, lead-time: ${leadTime}, when-short: backorders`)).toEqual({
        ...{ stock: 'mate', demand: 1, failures: 0, fill: printed(0.916542), assumes: 'poisson' },
      });
  });

  // A. K. Erlang's delay formula (1917) in standard tables: 55.4113 % wait for one of 5 servers under 4 erlangs.
  it('under one for one ordering where what waits is not ordered is that a server is free', () => {
    const keys = 'on-hand: 5, up-to: 5, lead-time: { distribution: exponential, mean: 4 s }';
    expect(estimate(keys)).toMatchObject({ fill: expect.closeTo(1 - 0.554113, 6), assumes: 'waiting' });
    // More is wanted than ever comes.
    expect(estimate('on-hand: 3, up-to: 3, lead-time: 4 s')).toMatchObject({ fill: 0, assumes: 'waiting' });
  });

  // I07: Hadley and Whitin (1963). An (s,S) rule places orders of S - s where pieces go one by one.
  it('under orders of some pieces goes by the pieces owed', () => {
    for (const keys of [
      'reorder-at: 3, order: 4',
      'reorder-at: 3, up-to: 7',
      'reorder-at: 3, order: 3, lots-of: 2',
    ])
      expect(estimate(`on-hand: 7, ${keys}, lead-time: 1.726 s`)).toMatchObject({
        ...{ fill: printed(0.965243), assumes: 'poisson' },
      });
  });

  // I06: Nahmias, chapter 5: 98 % at a reorder point of 125.531. Demand of 100 +- 10 by chance, and a lead time that
  // spreads by the root of 25^2 - 10^2, make up the standard deviation of 25.
  it('under a lead time that varies takes the demand over it for normal', () => {
    const fill = (at: number) =>
      estimate(
        `on-hand: 300, reorder-at: ${at}, order: 100, lead-time: { distribution: gamma, mean: 100 s, sd: 22.91288 s }`,
      );
    expect(fill(125)).toMatchObject({ assumes: 'normal' });
    expect(fill(125).fill).toBeLessThan(0.98);
    expect(fill(126).fill).toBeGreaterThan(0.98);
    expect(fill(126).fill! - fill(125).fill!).toBeLessThan(0.003);
  });

  // I04: A. K. Erlang (1917).
  it('where what finds none goes without is Erlang’s', () => {
    expect(estimate('on-hand: 5, up-to: 5, lead-time: 5 s', ', without-mates: scrap')).toMatchObject({
      ...{ fill: printed(1 - 0.284868), assumes: 'lost' },
    });
  });

  it.each([
    ['on-hand: 5', ''],
    ['on-hand: 5, up-to: 5, lead-time: 5 s, review: 10 s', ''],
    ['on-hand: 5, up-to: 5, lead-time: 5 s, delivers: { sound: 90 % }', ''],
    ['on-hand: 5, up-to: 5, lead-time: 5 s, outages: { every: 10 s, for: 1 s }', ''],
    ['on-hand: 5, up-to: 5, lead-time: 5 s, one-order-at-a-time: yes', ''],
    ['on-hand: 5, up-to: 5, lead-time: 5 s, shelf-life: 1 h', ''],
    ['on-hand: 5, up-to: 5, lead-time: { distribution: exponential, mean: 5 s }, in-sequence: yes', ''],
    ['on-hand: 5, reorder-at: 2, order: 3, lead-time: 5 s', ', without-mates: scrap'],
  ])('is none where no closed form fits: %s', (mate, serving) => {
    expect(estimate(mate, serving)).toMatchObject({ demand: 1, fill: null, assumes: null });
  });

  it('takes the demand of all that take it, by the flows of the ideal line, and leaves out what is unlimited', () => {
    const scenario = small(
      '1 h',
      `
stock:
  sheet: { on-hand: 9, up-to: 9, lead-time: 1 s }
  film: { unlimited: true }
parts: { tray: { features: { rim: { nominal: 1 mm, made-at: forming } } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 4, cycle: 10 s, to: good, breakdowns: { torn: {
    every: 9 h, counted: clock, repair: 0 s, cycle: resumes, spare: film } } }
policies: { carry on: [] }`,
    );
    expect(stockEstimates(scenario, idealLine(scenario))).toMatchObject([{ stock: 'sheet', demand: 0.1 }]);
  });

  // The Poisson chance of 1 - e^-m for no spare and 1 - e^-m (1 + m) for one, m = 0.6 failures in a lead time.
  it.each([
    [1, Math.exp(-0.6)],
    [2, Math.exp(-0.6) * 1.6],
  ])('of %i spares is the chance that so many fail in a lead time, all machines working', (pieces, fill) => {
    const scenario = small(
      '1 h',
      `
stock:
  blank: { unlimited: true }
  element: { on-hand: ${pieces}, up-to: ${pieces}, lead-time: { distribution: exponential, mean: 20 h }, when-short: backorders }
stations:
  shop: { does: work, takes: blank, machines: 3, cycle: 10 s, to: good, breakdowns: { burnt: {
    every: { distribution: exponential, mean: 100 h }, counted: working, repair: 9 h, cycle: resumes, spare: element } } }`,
    );
    const perSecond = expect.closeTo(3 / 360_000, 12);
    expect(stockEstimates(scenario, idealLine(scenario))).toEqual([
      {
        ...{ stock: 'element', demand: perSecond, failures: perSecond },
        ...{ fill: expect.closeTo(fill, 9), assumes: 'poisson' },
      },
    ]);
  });
});
