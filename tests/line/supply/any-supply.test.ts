import fc from 'fast-check';
import { expect, it } from 'vitest';
import { prepare, simulate } from '../../../src/experiment/simulate.ts';
import { Controls } from '../../../src/line/controls.ts';
import { selfCheck } from '../../../src/line/self-check.ts';
import type { StockMeasures } from '../../../src/line/supply/stock-measures.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { law, stock } from './made-up-stock.ts';

/** Lines in the default run, and how long each runs, s. */
const LINES = 250;
const LENGTH = 600;

const line = fc
  .record({
    ...{ blank: stock, mate: stock, pin: stock, cycle: law(1, 12), every: law(3, 20), serving: law(0, 8) },
    ...{ machines: fc.integer({ min: 1, max: 3 }), buffer: fc.constantFrom(0, 2, 'unlimited') },
    without: fc.constantFrom('wait', 'scrap'),
    late: fc.record({ at: law(1, 200), for: law(1, 200), 'again-after': law(20, 200) }),
    seed: fc.integer({ min: 1, max: 1000 }),
  })
  .map(({ blank, mate, pin, cycle, every, serving, machines, buffer, without, late, seed }) => ({
    seed,
    text: JSON.stringify({
      ...{ mendline: 1, title: 'any', about: 'supplies made up at random' },
      run: { 'warm-up': `${LENGTH / 4} s`, length: `${LENGTH} s`, seeds: 1 },
      stock: { blank, mate, pin },
      stations: {
        first: { does: 'work', takes: 'blank', machines, cycle, to: 'second' },
        second: {
          ...{ does: 'assemble', buffer, takes: ['mate', 'pin'], machines, cycle: serving, fits: [] },
          ...{ misfit: 'scrap', 'without-mates': without, to: 'good' },
        },
        arriving: { does: 'arrive', every, 'when-full': 'lost', to: 'third' },
        // Shares the pins.
        third: {
          does: 'assemble',
          buffer: 'unlimited',
          takes: ['pin'],
          cycle: serving,
          fits: [],
          misfit: 'scrap',
          to: 'good',
        },
      },
      disturbances: { late: { disturbs: 'supplier', stock: 'pin', ...late } },
      policies: { 'carry on': [] },
    }),
  }));

/** What of the options was seen to happen to a stock. */
const seen = (it: StockMeasures): string[] =>
  (['stock_outs', 'missing_pieces', 'unsound_pieces', 'expired_pieces', 'holding_cost'] as const).filter(
    (key) => (it[key] ?? 0) > 0,
  );

/** Shares and counts that can be no other way, whatever the supply. */
function expectSound(it: StockMeasures): void {
  for (const key of ['out_share', 'fill_rate', 'cycle_service_level'] as const) {
    expect(it[key] ?? 0, key).toBeGreaterThanOrEqual(0);
    expect(it[key] ?? 0, key).toBeLessThanOrEqual(1 + 1e-12);
  }
  for (const [key, value] of Object.entries(it)) expect(value ?? 0, key).toBeGreaterThanOrEqual(0);
}

// Each run checks itself: every piece ordered is on order, was delivered, never came or was found unsound, and every piece
// on hand or delivered is there, was taken, was thrown away as unsound or as too old. It throws if not.
it('any supply conserves every piece, whatever is short, late, unsound, too old or sped up', {
  timeout: 120_000,
}, () => {
  const shown = new Map<string, number>();
  const note = (what: string) => shown.set(what, (shown.get(what) ?? 0) + 1);
  fc.assert(
    fc.property(line, ({ text, seed }) => {
      const scenario = parseScenario(text, 'any.yaml');
      const outcome = simulate(scenario, 'carry on', seed);
      expect(simulate(scenario, 'carry on', seed)).toEqual(outcome);
      for (const stock of Object.values(outcome.stocks)) {
        expectSound(stock);
        for (const what of seen(stock)) note(what);
      }
      // The same line with orders sped up on the way.
      const hurried = prepare(scenario, 'carry on', seed);
      const controls = new Controls(hurried);
      for (let at = 20; at <= LENGTH; at += 20) {
        hurried.calendar.run(at);
        for (const name of hurried.stocks.keys()) if (controls.expedite(name)) note('sped up');
      }
      selfCheck(hurried);
    }),
    { numRuns: LINES, seed: 5, endOnFailure: true },
  );
  for (const what of [
    'stock_outs',
    'missing_pieces',
    'unsound_pieces',
    'expired_pieces',
    'holding_cost',
    'sped up',
  ])
    expect(shown.get(what) ?? 0, what).toBeGreaterThanOrEqual(LINES / 20);
});
