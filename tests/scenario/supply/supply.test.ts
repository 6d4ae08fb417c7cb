import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { changed, expectRefused, SOUND } from '../sample.ts';

const FILM = '  film: { unlimited: true }';
const film = (text: string) => changed(FILM, `  film: ${text}`);
const read = (text: string) => parseScenario(film(text), 'cell.yaml').stocks[2]!;

describe('the supply of a stock', () => {
  it('takes every key at once', () => {
    const stock = read(
      `{ on-hand: 90, reorder-at: 70, up-to: 300, review: 8 h, in-sequence: yes, least-order: 20, lots-of: 50,
      one-order-at-a-time: no, when-short: backorders, shelf-life: 30 d, holding: 0.02, per-order: 35,
      delivers: { sound: 98 %, short: { chance: 5 %, share: 80 % } }, incoming: { takes: 20 min, finds: 90 % },
      outages: { every: 20 d, for: 1 d }, expedite: { lead-time: 1 h, price: 2.5 },
      suppliers: { near: { share: 70 %, lead-time: 2 h, price: 4.2 }, far: { share: 30 %, lead-time: 8 h, price: 3 } } }`,
    );
    expect(stock).toMatchObject({
      ...{ reorderAt: 70, upTo: 300, review: 28_800, inSequence: true, oneOrderAtATime: false },
      ...{ delivers: { sound: 0.98, short: { chance: 0.05, share: 0.8 } }, holding: 0.02 },
      suppliers: [
        { name: 'near', share: expect.closeTo(0.7, 12), price: 4.2 },
        { name: 'far', share: 0.3, price: 3 },
      ],
    });
  });

  it('may cost something when it is short, though it is never ordered', () => {
    expect(read('{ on-hand: 9, per-short: 4 }')).toMatchObject({ perShort: 4 });
  });

  it('may be a base stock, with up-to alone', () => {
    expect(read('{ on-hand: 9, up-to: 9, lead-time: 1 h }')).toMatchObject({ upTo: 9 });
  });

  it.each([
    ['¤{ on-hand: 4, order: 4, lead-time: 1 h }', 'all three of reorder-at, order and lead-time'],
    ['¤{ on-hand: 4, reorder-at: 4, lead-time: 1 h }', 'or "up-to" instead of order'],
    ['¤{ on-hand: 4, lead-time: 1 h }', 'all three of reorder-at, order and lead-time'],
    ['¤{ on-hand: 4, up-to: 4 }', 'all three of reorder-at, order and lead-time'],
    ['{ on-hand: 4, reorder-at: 1, order: 3, up-to: ¤4, lead-time: 1 h }', 'expected one of "order"'],
    [
      '{ on-hand: 4, reorder-at: ¤5, up-to: 5, lead-time: 1 h }',
      'the reorder point 5 is not below "up-to", 5',
    ],
    ['{ on-hand: 4, reorder-at: ¤6, up-to: 5, lead-time: 1 h }', 'lower it, or raise "up-to"'],
    ['{ on-hand: ¤0, up-to: 5, lead-time: 0 s }', 'give pieces on hand, a lead time, or "unlimited: true"'],
    ['{ on-hand: 4, review: ¤8 h }', 'this stock is never ordered'],
    ['{ on-hand: 4, expedite: ¤{ lead-time: 1 h } }', 'this stock is never ordered'],
    ['{ on-hand: 4, when-short: ¤backorders }', 'this stock is never ordered'],
    ['¤{ unlimited: true, price: 3 }', 'an unlimited stock needs no price'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, price: ¤-3 }', 'expected an amount of money, 0 or more'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, holding: ¤3 EUR }', 'expected an amount of money, 0 or more'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, in-sequence: ¤maybe }', 'expected yes or no'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, when-short: ¤backorder }', 'did you mean "backorders"?'],
    ['{ on-hand: 4, up-to: ¤0, lead-time: 1 h }', 'nothing would ever be ordered'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, shelf-life: ¤0 s }', 'a shelf life must be above zero'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, lots-of: ¤0 }', 'expected a whole number from 1'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, review: ¤0 s }', 'a time here is above zero'],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, delivers: { sound: ¤0 % } }', 'above 0 %'],
    [
      '{ on-hand: 4, up-to: 4, lead-time: 1 h, delivers: { short: ¤{ chance: 100 %, share: 0 % } } }',
      'nothing would ever be delivered',
    ],
    ['{ on-hand: 4, up-to: 4, lead-time: 1 h, outages: { every: ¤0 s, for: 1 h } }', 'must be above zero'],
    ['{ on-hand: 4, up-to: 4, ¤reveiw: 1 h, lead-time: 1 h }', 'did you mean "review"?'],
  ])('%s is refused there', (text, message) => {
    expectRefused(film(text), message);
  });

  const suppliers = (text: string) => film(`{ on-hand: 4, up-to: 4, suppliers: ${text} }`);
  it.each([
    [
      '¤{ a: { share: 70 %, lead-time: 1 h }, b: { share: 20 %, lead-time: 1 h } }',
      'add up to 90 %, not to 100 %',
    ],
    [
      '¤{ a: { share: 70 %, lead-time: 1 h }, b: { rank: 1, lead-time: 1 h } }',
      'expected a "share" for each supplier',
    ],
    ['¤{ a: { lead-time: 1 h } }', 'expected a "share" for each supplier'],
    [
      '¤{ a: { rank: 1, lead-time: 1 h }, b: { rank: 1, lead-time: 1 h } }',
      'expected the ranks 1 to 2, each once',
    ],
    [
      '¤{ a: { rank: 1, lead-time: 1 h }, b: { rank: 3, lead-time: 1 h } }',
      'expected the ranks 1 to 2, each once',
    ],
    [
      '{ a: { rank: 1, lead-time: 1 h }, b: ¤{ rank: 2 } }',
      '"lead-time" is missing: give it here, or at the stock',
    ],
  ])('suppliers: %s is refused there', (text, message) => {
    expectRefused(suppliers(text), message);
  });

  it('takes one supplier in a mapping, and a lead time for all of them', () => {
    const stock = read(
      '{ on-hand: 4, up-to: 4, lead-time: 1 h, suppliers: { a: { rank: 1 }, b: { rank: 2 } } }',
    );
    expect(stock.suppliers?.map(({ rank }) => rank)).toEqual([1, 2]);
  });
});

describe('a disturbance of a supplier', () => {
  const late = '  late: { disturbs: supplier, stock: sheet, at: 2 h, for: 4 h }';
  const several = SOUND.replace(
    '    lead-time: 2 h\n',
    '    lead-time: 2 h\n    suppliers: { near: { rank: 1 }, far: { rank: 2 } }\n',
  );

  it('may name one of several', () => {
    const text = changed(late, late.replace('sheet,', 'sheet, supplier: far,'), several);
    expect(parseScenario(text, 'cell.yaml').disturbances[1]).toMatchObject({ supplier: 'far' });
  });

  it('names one that the stock has', () => {
    expectRefused(
      changed(late, late.replace('sheet,', 'sheet, supplier: ¤fra,'), several),
      '"fra" is no supplier of "sheet"; did you mean "far"?',
    );
    expectRefused(
      changed(late, late.replace('sheet,', 'sheet, supplier: ¤far,')),
      '"sheet" has only one supplier; leave the name out',
    );
  });
});
