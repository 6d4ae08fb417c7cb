import { expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { Rare } from '../../../src/line/supply/rare.ts';

const rare = (chance: number, seed = 1) => new Rare(chance, new Streams(seed).of('rare'));

it('happens as often as its chance says, and spreads as a binomial number does', () => {
  const it = rare(0.07);
  const found = Array.from({ length: 20_000 }, () => it.among(50));
  const mean = found.reduce((sum, x) => sum + x, 0) / found.length;
  const variance = found.reduce((sum, x) => sum + (x - mean) ** 2, 0) / found.length;
  // Binomial: n p and n p (1 - p), within 3.5 standard errors; that of a variance is about variance x sqrt(2/n).
  const exact = 50 * 0.07 * 0.93;
  expect(Math.abs(mean - 3.5)).toBeLessThan(3.5 * Math.sqrt(exact / found.length));
  expect(Math.abs(variance / exact - 1)).toBeLessThan(4 * Math.sqrt(2 / found.length));
});

it('gives each piece its own luck, however the row is cut', () => {
  const [whole, cut] = [rare(0.2), rare(0.2)];
  expect(cut.among(7) + cut.among(0) + cut.among(93)).toBe(whole.among(100));
});

it('happens to all at a chance of one', () => {
  expect(rare(1).among(9)).toBe(9);
});
