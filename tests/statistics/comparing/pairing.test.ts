import { describe, expect, it } from 'vitest';
import { pairingOf } from '../../../src/statistics/comparing/pairing.ts';

/** Two waves without correlation, each with a sample variance of 1. */
const [FIRST, SECOND] = [
  [1, -1, 1, -1],
  [1, 1, -1, -1],
].map((wave) => wave.map((x) => x * Math.sqrt(3 / 4)));

describe('what common luck gains', () => {
  // O05: standard deviations 4 and 5 with correlation 0 and .8: variance of the difference 41 and 9. A. M. Law, Simulation
  // Modeling and Analysis, chapter 11.
  it.each([
    [0, 41],
    [0.8, 9],
  ])('with a correlation of %d leaves a variance of %d', (correlation, variance) => {
    const one = FIRST!.map((x) => 4 * x);
    const other = FIRST!.map((x, i) => 5 * (correlation * x + Math.sqrt(1 - correlation ** 2) * SECOND![i]!));
    const found = pairingOf(one, other);
    expect(found.unpaired).toBeCloseTo(41, 9);
    expect(found.paired).toBeCloseTo(variance, 9);
    expect(found.share).toBeCloseTo(variance / 41, 9);
  });

  it('is all where both do the same, and unknown where nothing varies', () => {
    expect(pairingOf([1, 2, 4], [1, 2, 4]).share).toBeCloseTo(0, 12);
    expect(pairingOf([1, 1], [2, 2])).toEqual({ paired: 0, unpaired: 0, share: null });
  });
});
