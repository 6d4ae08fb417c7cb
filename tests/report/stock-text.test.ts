import { describe, expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { stationTexts } from '../../src/report/station-text.ts';
import { stockTexts } from '../../src/report/stock-text.ts';
import { parseScenario } from '../../src/scenario/parse.ts';

function told(stock: string): string[] {
  const text = `mendline: 1
title: T
about: Invented.
run: { warm-up: 0 s, length: 1 h, seeds: 1 }
stock: { blank: { ${stock} } }
stations: { press: { does: work, takes: blank, cycle: 10 s, to: good } }
policies: { carry on: [] }`;
  const scenario = parseScenario(text, 'test.yaml');
  return stockTexts(scenario, idealLine(scenario));
}

describe('what check says of a stock', () => {
  it('is nothing where it is unlimited, and little where it is never ordered', () => {
    expect(told('unlimited: true')).toEqual([]);
    expect(told('on-hand: 1, shelf-life: 48 h')).toEqual([
      '"blank": 1 piece on hand, never ordered; thrown away after 48 h',
    ]);
  });

  it('is its rule, its supplier and the estimate with what that assumes', () => {
    expect(told('on-hand: 40, reorder-at: 20, order: 30, lead-time: 2 min')[0]).toMatch(
      /^"blank": 40 pieces on hand, 30 ordered at 20; delivers after 2 min; fill rate [\d.]+ % if pieces were wanted at random \(Poisson\) and what is short were waited for and ordered at once, as under "when-short: backorders", 360\.0 \/h in the ideal line$/,
    );
    expect(told('on-hand: 40, up-to: 40, lead-time: 2 min')[0]).toContain(
      'each piece taken is ordered, up to 40;',
    );
  });

  it('is every option of it', () => {
    const [text] = told(
      `on-hand: 40, reorder-at: 20, up-to: 50, review: 8 h, least-order: 5, lots-of: 10, one-order-at-a-time: yes,
      in-sequence: yes, when-short: backorders, delivers: { sound: 98 %, short: { chance: 5 %, share: 80 % } },
      incoming: { takes: 20 min, finds: 90 % }, outages: { every: 400 h, for: 24 h }, lead-time: 9 h,
      suppliers: { near: { share: 70 %, lead-time: 2 h }, far: { share: 30 % } }`,
    );
    expect(text).toContain(
      'ordered up to 50 at 20, looked at every 8 h, at least 5 an order, in lots of 10,',
    );
    expect(text).toContain(
      'one order out at a time, orders come in sequence, what waits for a piece is ordered, too;',
    );
    expect(text).toContain('"near" (70.0 %) delivers after 2 h, 98.0 % of the pieces sound,');
    expect(text).toContain('"far" (30.0 %) delivers after 9 h');
    expect(text).toContain(
      '5.0 % of the deliveries bring 80.0 %, inspected for 20 min, 90.0 % of the unsound found,',
    );
    expect(text).toContain('out of service after 400 h for 24 h; no closed form for this supply');
  });

  it('is how soon an order comes that is sped up', () => {
    expect(
      told('on-hand: 9, reorder-at: 5, order: 9, lead-time: 9 h, expedite: { lead-time: 2 h, price: 1 }')[0],
    ).toContain('delivers after 9 h; an order that is sped up comes after 2 h; ');
  });

  it('is in the place of which other stock it may be taken', () => {
    const other = '} , other: { on-hand: 5, stands-in-for: blank';
    expect(told(`on-hand: 1 ${other}`)).toEqual([
      '"blank": 1 piece on hand, never ordered',
      '"other": 5 pieces on hand, never ordered; may be taken in the place of "blank"',
    ]);
    const ordered = `${other}, up-to: 5, lead-time: 2 h`;
    expect(told(`on-hand: 1 ${ordered}`)[1]).toContain(
      '; delivers after 2 h; may be taken in the place of "blank"; ',
    );
  });

  it('that repairs take is how often there is none, and at the station what they take', () => {
    const text = `mendline: 1
title: T
about: Invented.
run: { warm-up: 0 s, length: 1 h, seeds: 1 }
stock: { blank: { unlimited: true }, element: { on-hand: 1, up-to: 1, lead-time: 20 h, when-short: backorders } }
stations: { press: { does: work, takes: blank, cycle: 10 s, machines: 3, to: good, breakdowns: { burnt: {
  every: 75 h, counted: working, repair: 1 h, cycle: resumes, spare: element } } } }
policies: { carry on: [] }`;
    const scenario = parseScenario(text, 'test.yaml');
    // 1 - e^-0.8.
    expect(stockTexts(scenario, idealLine(scenario))[0]).toMatch(
      /; 55\.1 % of the times that one is needed there is none, if those came at random .*, one in 25 h, and each were ordered for$/,
    );
    expect(stationTexts(scenario)).toEqual(['"press": to repair "burnt" takes one "element"']);
  });
});
