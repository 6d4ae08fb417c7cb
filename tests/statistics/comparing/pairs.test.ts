import { describe, expect, it } from 'vitest';
import { againstFirst, allPairs, decidePairs } from '../../../src/statistics/comparing/pairs.ts';
import { normals } from '../normals.ts';
import { chanceError } from '../printed.ts';

const criterion = { better: 'higher', worth: 0, level: 0.95 } as const;

describe('pairs of systems', () => {
  it('are each against the first, or each against each', () => {
    expect(againstFirst(3)).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect(allPairs(3)).toEqual([
      [1, 0],
      [2, 0],
      [2, 1],
    ]);
    expect(againstFirst(1)).toEqual([]);
  });

  // O04: A. M. Law, Simulation Modeling and Analysis, chapter 10: two inventory policies, paired, 90 % (data from memory).
  it('are decided as published', () => {
    const values = [
      [126.97, 124.31, 126.68, 122.66, 127.23],
      [118.21, 120.22, 122.45, 122.68, 119.4],
    ];
    const [found] = decidePairs(values, againstFirst(2), { better: 'lower', worth: 0, level: 0.9 });
    expect(found).toMatchObject({ one: 1, other: 0, decision: { word: 'better', more: null } });
    expect(found!.decision.difference.lower).toBeCloseTo(-8.30687, 4);
    expect(found!.decision.difference.upper).toBeCloseTo(-1.64913, 4);
    expect(found!.chance).toBeLessThan(0.1);
    const [strict] = decidePairs(values, againstFirst(2), { better: 'lower', worth: 2, level: 0.9 });
    expect(strict!.decision).toMatchObject({ word: 'undecided', surely: 'better' });
  });

  it('of equal systems are called different at most as seldom as stated, all together', () => {
    const draw = normals(91);
    const tries = 1500;
    let wrong = 0;
    for (let i = 0; i < tries; i++) {
      const luck = Array.from({ length: 10 }, draw);
      const values = [0, 1, 2].map(() => luck.map((shared) => 2 * shared + draw()));
      const found = decidePairs(values, allPairs(3), criterion);
      if (found.some(({ decision }) => decision.word !== 'undecided')) wrong++;
      // Holm calls different whatever Bonferroni does.
      for (const { decision, chance } of found)
        if (decision.surely) expect(chance).toBeLessThanOrEqual(0.05 + 1e-9);
    }
    expect(wrong / tries).toBeLessThan(0.05 + chanceError(0.05, tries));
    expect(wrong).toBeGreaterThan(0);
  });

  it('with unequal numbers of runs are refused', () => {
    expect(() => decidePairs([[1, 2], [1]], allPairs(2), criterion)).toThrow(RangeError);
  });
});
