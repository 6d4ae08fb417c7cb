import { expect } from 'vitest';

/** Holds a value to a printed one of six digits. */
export function expectPrinted(actual: number, printed: number): void {
  expect(Math.abs(actual - printed), `${actual} for the printed ${printed}`).toBeLessThanOrEqual(
    1e-5 * Math.abs(printed),
  );
}

/** How often something happens in so many tries of chance `chance` may differ from it by chance: 3.5 standard errors. */
export const chanceError = (chance: number, tries: number): number =>
  3.5 * Math.sqrt((chance * (1 - chance)) / tries);
