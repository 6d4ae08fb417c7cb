import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

const ordered = (cycle: string, demand: string) =>
  `${blanks(`  only: { does: work, takes: blank, cycle: ${cycle}, to: good }`)}
demand: { ${demand} }`;

describe('demand', () => {
  it('blocks the line while finished goods are full, and begins with those at the start', () => {
    // Finished goods: 1, from 2 on 2, from 4 on 3, which is all. The part of 6 waits for the order of 10, that of 12
    // for the order of 20.
    const body = ordered('2 s', 'every: 10 s, due-after: 5 s, finished-goods: { at-start: 1, most: 3 }');
    const outcome = ran(small('20 s', body));
    expect(outcome.counts.good).toBe(4);
    expect(seconds(outcome, 'only', 20)).toEqual({ working: 8, blocked: 12 });
    expect(outcome.measures.finished_goods_parts).toBeCloseTo((2 * 1 + 2 * 2 + 16 * 3) / 20, 9);
    // The order of 10 fell due at 15; that of 20 is not due yet.
    expect(outcome.measures.on_time_rate).toBe(1);
    // Before 15 none fell due.
    expect(ran(small('14 s', body)).measures.on_time_rate).toBeNull();
  });

  it('serves whole orders, first come first served, and counts those served by when they are due', () => {
    // Three pieces each, ordered at 10, 20 and 30, made at 12, 24 and 36, due at 13, 23 and 33.
    const body = ordered('4 s', 'every: 10 s, pieces: 3, due-after: 3 s, finished-goods: { most: 5 }');
    expect(ran(small('13 s', body)).measures.on_time_rate).toBe(1);
    expect(ran(small('33 s', body)).measures.on_time_rate).toBeCloseTo(1 / 3, 9);
    // Finished goods: one 4-8, two 8-12, none 12-16, one 16-20, two 20-24, none, though orders could be served in part.
    const outcome = ran(small('24 s', body));
    expect(outcome.measures.finished_goods_parts).toBeCloseTo((2 * (4 + 8)) / 24, 9);
    expect(outcome.counts.good).toBe(6);
  });

  it('counts an order served at the very instant it is due as on time', () => {
    // Two pieces, ordered at 10, made at 11 and 22, due at 22: the due time was set before the second piece was begun.
    const body = ordered('11 s', 'every: 10 s, pieces: 2, due-after: 12 s, finished-goods: { most: 5 }');
    expect(ran(small('22 s', body)).measures.on_time_rate).toBe(1);
    // That of 20 is due at 32 and served at 44.
    expect(ran(small('44 s', body)).measures.on_time_rate).toBeCloseTo(1 / 3, 9);
  });

  it('counts the orders that finished goods served in full when they came', () => {
    // Three pieces each, ordered at 10, 20 and 30; five are on hand at 10, with one made each 4 s: 7 less 3, 6 less 3, 6.
    const body = ordered(
      '4 s',
      'every: 10 s, pieces: 3, due-after: 3 s, finished-goods: { at-start: 5, most: 9 }',
    );
    expect(ran(small('30 s', body)).measures.order_fill_rate).toBe(1);
    // None at the start, as before: 2 at 10 and 2 at 20 are not enough.
    const late = ordered('4 s', 'every: 10 s, pieces: 3, due-after: 3 s, finished-goods: { most: 5 }');
    expect(ran(small('24 s', late)).measures.order_fill_rate).toBe(0);
    expect(ran(small('9 s', late)).measures.order_fill_rate).toBeNull();
  });

  it('leaves out orders that fell due in the warm-up', () => {
    // As above: of those due at 23 and 33 none was on time, and the one due at 13 was.
    const body = ordered('4 s', 'every: 10 s, pieces: 3, due-after: 3 s, finished-goods: { most: 5 }');
    expect(ran(small('20 s', body, '13 s')).measures.on_time_rate).toBe(0);
    expect(ran(small('20 s', body, '12 s')).measures.on_time_rate).toBeCloseTo(1 / 2, 9);
  });

  it('lets as many stations deliver as an order makes room for', () => {
    // a and b wait from 2 on with finished goods full; the order of 10 takes two pieces, and both start anew.
    const body = `${blanks(`  a: { does: work, takes: blank, cycle: 2 s, to: good }
  b: { does: work, takes: blank, cycle: 2 s, to: good }`)}
demand: { every: 10 s, pieces: 2, due-after: 1 s, finished-goods: { at-start: 2, most: 2 } }`;
    const outcome = ran(small('12 s', body));
    expect(outcome.counts.good).toBe(2);
    for (const name of ['a', 'b']) expect(seconds(outcome, name, 12)).toEqual({ working: 4, blocked: 8 });
  });

  it('lets several stations that wait deliver in turn', () => {
    // a and b each finish at 2 with finished goods full; the order of 10 takes one piece and lets a in, that of 20 b.
    const body = `${blanks(`  a: { does: work, takes: blank, cycle: 2 s, to: good }
  b: { does: work, takes: blank, cycle: 2 s, to: good }`)}
demand: { every: 10 s, due-after: 1 s, finished-goods: { at-start: 1, most: 1 } }`;
    const outcome = ran(small('20 s', body));
    expect(seconds(outcome, 'a', 20)).toEqual({ working: 2 + 2, blocked: 8 + 8 });
    expect(seconds(outcome, 'b', 20)).toEqual({ working: 2, blocked: 18 });
    expect(outcome.counts.good).toBe(2);
  });
});
