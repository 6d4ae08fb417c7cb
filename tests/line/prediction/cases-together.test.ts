import { expect, it } from 'vitest';
import { casesTogether } from '../../../src/line/prediction/cases-together.ts';

const dice = (sides: number) => Array.from({ length: sides }, (_, i) => ({ share: 1 / sides, value: i + 1 }));

/** Chance that the sum of what comes together is at most so much. */
const chance = (most: number, ...given: { share: number; value: number }[][]) =>
  casesTogether(given).reduce((sum, { share, cases }) => {
    const total = cases.reduce((all, { value }) => all + value, 0);
    return total <= most ? sum + share : sum;
  }, 0);

// Two dice: 1/36 of the throws make 2, 10/36 make 5 or less.
it('few are all of them', () => {
  expect(casesTogether([dice(6), dice(6)])).toHaveLength(36);
  expect(chance(2, dice(6), dice(6))).toBeCloseTo(1 / 36, 12);
  expect(chance(5, dice(6), dice(6))).toBeCloseTo(10 / 36, 12);
  expect(casesTogether([])).toEqual([{ share: 1, cases: [] }]);
});

// Dice of 300 and 200 sides: of the 60 000 throws, 100 x 99 / 2 sum to 100 or less.
it('many are told by some', () => {
  const together = casesTogether([dice(300), dice(200)]);
  expect(together.length).toBeLessThan(60_000);
  expect(together.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  expect(Math.abs(chance(100, dice(300), dice(200)) - 4950 / 60_000)).toBeLessThan(5e-4);
});

// No sum of the dice exceeds 500, so only the coin decides.
it('unlike shares count as they are', () => {
  const coin = [
    { share: 0.9, value: 0 },
    { share: 0.1, value: 1000 },
  ];
  expect(Math.abs(chance(500, dice(300), dice(200), coin) - 0.9)).toBeLessThan(5e-4);
});
