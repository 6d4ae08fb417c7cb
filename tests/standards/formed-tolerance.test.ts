import { describe, expect, it } from 'vitest';
import { formedTolerance } from '../../src/standards/formed-tolerance.ts';

const INCH = 25.4;

/** In inches, as the pages give it. */
function inInches(length: number) {
  const { closest, widest } = formedTolerance(length * INCH);
  return [closest / INCH, widest / INCH] as const;
}

describe('what formed dimensions are commonly held to', () => {
  // T10: common practice of the trade; the tolerance pages of thermoform.com and mayfieldplastics.com.
  it('is 0.038 in by one shop and 0.056 in by another at 30 in', () => {
    const [closest, widest] = inInches(30);
    expect(closest).toBeCloseTo(0.038, 9);
    expect(widest).toBeCloseTo(0.056, 9);
  });

  it.each([1, 5, 12])('is 0.020 in by both at %d in, within the first 12', (length) => {
    const [closest, widest] = inInches(length);
    expect(closest).toBeCloseTo(0.02, 9);
    expect(widest).toBeCloseTo(0.02, 9);
  });
});
