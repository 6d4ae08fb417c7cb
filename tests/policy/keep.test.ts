import { describe, expect, it } from 'vitest';
import { ran, small } from '../line/small-line.ts';
import { expectRefused } from '../scenario/sample.ts';

const line = (stock: string, response: string) => `
stock:
  blank: { ${stock}, lead-time: { distribution: exponential, mean: 40 s } }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  carry on: []
  another way: [{ do: keep, stock: blank, ${response} }]`;

const outcome = (stock: string, response: string, policy?: string) => {
  const { policy: _, ...given } = ran(small('4000 s', line(stock, response)), policy);
  return given;
};

describe('keep', () => {
  it.each([
    {
      as: 'on-hand: 2, reorder-at: 1, order: 3',
      kept: 'on-hand: 5, reorder-at: 4, order: 6',
      same: 'on-hand: 5, reorder-at: 4, order: 6',
    },
    {
      as: 'on-hand: 2, reorder-at: 1, order: 3',
      kept: 'up-to: 6',
      same: 'on-hand: 2, reorder-at: 1, up-to: 6',
    },
    {
      as: 'on-hand: 2, reorder-at: 1, up-to: 6',
      kept: 'order: 2',
      same: 'on-hand: 2, reorder-at: 1, order: 2',
    },
    { as: 'on-hand: 2, up-to: 3', kept: 'on-hand: 7, up-to: 7', same: 'on-hand: 7, up-to: 7' },
  ])('makes of $as, by $kept, what $same is', ({ as, kept, same }) => {
    const given = outcome(as, kept, 'another way');
    expect(given).toEqual(outcome(same, kept));
    expect(given).not.toEqual(outcome(as, kept));
  });

  it('is refused where it keeps what is not there, nothing, or what cannot be kept so', () => {
    const text = (
      response: string,
      stock = 'on-hand: 2, reorder-at: 1, order: 3, lead-time: 40 s',
    ) => `mendline: 1
title: t
about: a
run: { warm-up: 0 s, length: 10 s, seeds: 1 }
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  p: [${response}]
`;
    expectRefused(text('{ do: keep, stock: ¤blnk, up-to: 3 }'), /"blnk" is no stock.*"blank"/);
    expectRefused(text('¤{ do: keep, stock: blank }'), /say how "blank" is kept/);
    expectRefused(text('{ do: keep, stock: ¤blank, up-to: 3 }', 'unlimited: true'), /unlimited/);
    expectRefused(text('{ do: keep, stock: blank, up-to: ¤-1 }'), /whole number/);
    expectRefused(text('{ do: keep, stock: blank, reorder-at: ¤8, up-to: 3 }'), /reorder/);
  });
});
