import { expect, it } from 'vitest';
import { signOf } from '../../../src/statistics/comparing/better.ts';

it('makes more the better', () => {
  expect([signOf('higher') * 3 > signOf('higher') * 2, signOf('lower') * 3 > signOf('lower') * 2]).toEqual([
    true,
    false,
  ]);
});
