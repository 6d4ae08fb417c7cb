import { expect, it } from 'vitest';
import { gammaFunction } from '../../src/kernel/gamma-function.ts';

// Factorials and halves exactly; the others by M. Abramowitz and I. A. Stegun (1964), table 6.1, from memory.
it.each([
  [1, 1],
  [2, 1],
  [5, 24],
  [11, 3_628_800],
  [21, 2_432_902_008_176_640_000],
  [0.5, Math.sqrt(Math.PI)],
  [1.5, Math.sqrt(Math.PI) / 2],
  [3.5, (15 * Math.sqrt(Math.PI)) / 8],
  [1.25, 0.9064024771],
  [1.75, 0.9190625268],
])('gamma of %d is %d', (x, value) => {
  const printed = value < 1 && x !== 1.5 ? 1e-10 : 1e-13;
  expect(Math.abs(gammaFunction(x) / value - 1)).toBeLessThan(printed);
});

it('grows by its argument from one number to the next', () => {
  for (let x = 0.05; x < 100; x += 0.37)
    expect(Math.abs(gammaFunction(x + 1) / (x * gammaFunction(x)) - 1)).toBeLessThan(1e-12);
});
