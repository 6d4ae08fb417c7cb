import { describe, expect, it } from 'vitest';
import { disturbed, oneStation, runFor } from '../disturbed-line.ts';

const ordered = `${oneStation()}demand: { every: 10 s, due-after: 1 h, finished-goods: { most: 5 } }
`;
const came = (seconds: number, keys?: string) =>
  runFor(seconds, keys === undefined ? ordered : disturbed(ordered, `  rush: { disturbs: demand, ${keys} }`))
    .tally.ordersCame;

describe('a disturbed demand', () => {
  it('of 200 % doubles the orders', () => {
    expect(came(1000)).toBe(100);
    expect(came(1000, 'to: 200 %, at: 0 s, for: 1 h')).toBe(200);
  });

  it('speeds up the order on its way, and lets the next come as ever when it is over', () => {
    // 10, 20, 30, then what is left of 5 s takes 2.5 s: 37.5, 42.5, 47.5, 52.5; from 55 on half of 5 s is left: 60, 70.
    const keys = 'to: 200 %, at: 35 s, for: 20 s';
    expect([37, 38, 52.5, 59, 60, 69, 70].map((at) => came(at, keys))).toEqual([3, 4, 7, 7, 8, 8, 9]);
  });

  it('may fall', () => {
    expect(came(1000, 'to: 50 %, at: 0 s, for: 1 h')).toBe(50);
  });
});
