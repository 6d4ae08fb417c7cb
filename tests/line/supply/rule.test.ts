import { describe, expect, it } from 'vitest';
import { ruleOf } from '../../../src/line/supply/rule.ts';

const leadTime = { distribution: 'constant', value: 5 } as const;
const rule = (keys: object) => ruleOf({ name: 'frame', onHand: 9, leadTime, ...keys })!;

describe('a rule', () => {
  it('orders so many at the reorder point', () => {
    expect(rule({ reorderAt: 4, order: 6 })).toMatchObject({ orderAt: 4, review: null, oneAtATime: false });
    expect(rule({ reorderAt: 4, order: 6 }).quantity(3)).toBe(6);
  });

  it('orders up to a level, at the reorder point or at once', () => {
    expect(rule({ reorderAt: 4, upTo: 20 }).quantity(3)).toBe(17);
    const base = rule({ upTo: 20 });
    expect(base.orderAt).toBe(19);
    expect(base.quantity(19)).toBe(1);
  });

  it('orders no less than the least order and whole lots', () => {
    expect(rule({ upTo: 20, leastOrder: 5 }).quantity(18)).toBe(5);
    expect(rule({ upTo: 20, lotsOf: 6 }).quantity(13)).toBe(12);
    expect(rule({ reorderAt: 4, order: 12, leastOrder: 13, lotsOf: 5 }).quantity(4)).toBe(15);
  });

  it('is none where nothing is ordered', () => {
    expect(ruleOf({ name: 'frame', onHand: 9 })).toBeNull();
  });
});
