import { expect, it } from 'vitest';
import {
  codewordsOf,
  SYMBOL_SIZES,
  unreadableChance,
  wrongCodewords,
} from '../../src/standards/data-matrix.ts';

// M05: counts of the 24x24 symbol from a reader's manual, after ISO/IEC 16022.
it('M05: a symbol of 24x24 has 36 codewords of data and 24 of correction, and corrects 12', () => {
  expect(codewordsOf('24x24')).toEqual({ data: 36, check: 24, corrected: 12 });
});

// M05: the upper tail of the binomial law beyond the Reed-Solomon bound, n = 60, t = 12.
it.each([
  [0.05, 6.84958e-6],
  [0.1, 0.00568101],
  [0.15, 0.106246],
  [0.2, 0.42356],
])('M05: with a share of %d of its codewords wrong it is unreadable with chance %d', (wrong, chance) => {
  expect(Math.abs(unreadableChance('24x24', wrong) / chance - 1)).toBeLessThan(1e-5);
});

// A codeword is eight modules, and all inside the border of the symbol, (n - 2) squared of them, hold codewords (ISO/IEC 16022).
it.each(SYMBOL_SIZES)('%s holds as many codewords as its modules have room for', (size) => {
  const { data, check } = codewordsOf(size);
  const modules = (Number.parseInt(size, 10) - 2) ** 2;
  expect(data + check).toBe(Math.floor(modules / 8));
});

it('the chances of so many wrong codewords are a law, also where all or none are wrong', () => {
  const chances = wrongCodewords('26x26', 0.3);
  expect(chances.length).toBe(73);
  expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
  // The mean of the binomial law is n p.
  expect(chances.reduce((sum, chance, k) => sum + k * chance, 0)).toBeCloseTo(72 * 0.3, 10);
  expect(unreadableChance('10x10', 0)).toBe(0);
  expect(unreadableChance('10x10', 1)).toBe(1);
});
