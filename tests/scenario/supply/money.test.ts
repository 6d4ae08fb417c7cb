import { expect, it } from 'vitest';
import { money } from '../../../src/scenario/supply/money.ts';

it('is a plain number, never negative', () => {
  expect(money.parse(4.2)).toBe(4.2);
  expect(money.parse(0)).toBe(0);
  for (const given of [-1, '4.20', '4 EUR', Number.POSITIVE_INFINITY, null])
    expect(money.safeParse(given).success, String(given)).toBe(false);
});
