import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/experiment/simulate.ts';
import type { Line } from '../../../src/line/line.ts';
import { selfCheck } from '../../../src/line/self-check.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { law, stock } from './made-up-stock.ts';

const text = (stocks: object, more: object = {}) =>
  JSON.stringify({
    ...{ mendline: 1, title: 'any', about: 'mates that are taken as one' },
    run: { 'warm-up': '0 s', length: '600 s', seeds: 1 },
    stock: stocks,
    stations: {
      arriving: { does: 'arrive', every: '5 s', 'when-full': 'lost', to: 'joining' },
      joining: {
        ...{ does: 'assemble', buffer: 'unlimited', takes: ['clip', 'pin', 'nut'], machines: 2 },
        ...{ cycle: '8 s', fits: [], misfit: 'scrap', to: 'good', ...more },
      },
    },
    policies: { 'carry on': [] },
  });
const lineOf = (scenario: string, seed = 1) => prepare(parseScenario(scenario, 'any.yaml'), 'carry on', seed);
const matesOf = (line: Line) => line.assemblies.get('joining')!.on.mates;
const plain = { 'on-hand': 20, 'reorder-at': 5, order: 10, 'lead-time': '30 s' };

describe('mates taken as one', () => {
  it('are those without features that one station alone takes', () => {
    const spare = { every: '100 s', counted: 'clock', repair: '5 s', cycle: 'resumes', spare: 'nut' };
    const sized = { ...plain, features: { bore: { nominal: '5 mm', 'own-sd': '0.1 mm' } } };
    const line = lineOf(text({ clip: plain, pin: sized, nut: plain }, { breakdowns: { worn: spare } }));
    expect(matesOf(line).kit!.kinds.map((kind) => kind.stock.name)).toEqual(['clip']);
    expect(matesOf(line).loose.map(({ place, feature }) => [place, feature])).toEqual([
      [1, 0],
      [2, 1],
    ]);
  });

  it('are booked whenever somebody looks', () => {
    const line = lineOf(text({ clip: plain, pin: plain, nut: plain }));
    // Loaded at 5, 10, 15 s and so on.
    line.calendar.run(27);
    const clip = line.stocks.get('clip')!;
    expect([clip.onHand, clip.tally.taken, clip.counted().onHandSeconds]).toEqual([
      15,
      5,
      20 * 27 - (22 + 17 + 12 + 7 + 2),
    ]);
  });

  // The two lines differ in nothing but how pieces are booked.
  it('give what they would if each were taken by itself, whatever the supply', { timeout: 60_000 }, () => {
    let short = 0;
    fc.assert(
      fc.property(stock, stock, stock, law(2, 20), fc.nat(1000), (clip, pin, nut, cycle, seed) => {
        const scenario = text({ clip, pin, nut }, { cycle });
        const [one, each] = [lineOf(scenario, seed), lineOf(scenario, seed)];
        matesOf(each).scatter();
        expect(matesOf(one).kit).not.toBeNull();
        // Some way through they are taken each by itself, as when a policy builds ahead.
        for (const at of [200, 600]) {
          for (const line of [one, each]) {
            line.calendar.run(at);
            selfCheck(line);
          }
          expect(one.tally).toEqual(each.tally);
          for (const [name, its] of one.stocks) {
            if (!its.limited) continue;
            const { onHandSeconds, ...counts } = its.counted();
            const { onHandSeconds: same, ...others } = each.stocks.get(name)!.counted();
            expect(counts).toEqual(others);
            expect(onHandSeconds).toBeCloseTo(same, 6);
            short += counts.stockOuts;
          }
          const assembly = one.assemblies.get('joining')!;
          const other = each.assemblies.get('joining')!;
          for (const [m, { now }] of matesOf(one).all.entries())
            expect(assembly.heldSeconds(now)).toBeCloseTo(other.heldSeconds(matesOf(each).all[m]!.now), 6);
          if (at === 200) assembly.buildAhead(null);
        }
      }),
      { numRuns: 100, seed: 11 },
    );
    expect(short).toBeGreaterThan(100);
  });
});
