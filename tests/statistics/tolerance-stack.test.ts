import { expect, it } from 'vitest';
import { limitDeviations } from '../../src/standards/iso-286.ts';
import { toleranceStack } from '../../src/statistics/tolerance-stack.ts';

// D14, tolerance-stack texts: five parts of +-0.1 each give +-0.5 at worst, and +-0.223607 by the root of the sum of squares.
it('five parts', () => {
  const { worst, rootSumSquare } = toleranceStack(
    Array.from({ length: 5 }, () => ({ factor: 1, limits: { lower: 9.9, upper: 10.1 } })),
  );
  expect(worst).toEqual({ lower: expect.closeTo(49.5, 12), upper: expect.closeTo(50.5, 12) });
  expect(rootSumSquare.upper - 50).toBeCloseTo(0.223607, 6);
  expect(50 - rootSumSquare.lower).toBeCloseTo(0.223607, 6);
});

// D04: H7/g6 at 25 mm has a clearance of 7 to 41 um (ISO 286-2).
it('hole minus shaft', () => {
  const { worst } = toleranceStack([
    { factor: 1, limits: limitDeviations(25, 'H7') },
    { factor: -1, limits: limitDeviations(25, 'g6') },
  ]);
  expect(worst.lower).toBeCloseTo(0.007, 9);
  expect(worst.upper).toBeCloseTo(0.041, 9);
});
