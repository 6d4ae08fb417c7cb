import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { mixingMatrix } from '../../src/statistics/mixing.ts';

const library = jstat as unknown as {
  readonly jStat: { cholesky(matrix: readonly (readonly number[])[]): number[][] };
};

/** L L'. */
const square = (lower: readonly (readonly number[])[]) =>
  lower.map((a) => lower.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)));

const close = (got: readonly (readonly number[])[], to: readonly (readonly number[])[]) => {
  for (const [i, row] of to.entries())
    for (const [j, value] of row.entries()) expect(got[i]![j], `${i},${j}`).toBeCloseTo(value, 10);
};

const SOUND = [
  [1, 0.6, -0.3],
  [0.6, 1, 0.2],
  [-0.3, 0.2, 1],
];

describe('the mixing matrix', () => {
  it('is the Cholesky factor that a general library gives', () => {
    close(mixingMatrix(SOUND)!, library.jStat.cholesky(SOUND));
  });

  it('of two draws is sin and cos of the angle between them', () => {
    close(
      mixingMatrix([
        [1, 0.6],
        [0.6, 1],
      ])!,
      [
        [1, 0],
        [0.6, 0.8],
      ],
    );
  });

  it('makes the same draw of one that is wholly tied to another', () => {
    const tied = [
      [1, 1, 0.5],
      [1, 1, 0.5],
      [0.5, 0.5, 1],
    ];
    const lower = mixingMatrix(tied)!;
    close(square(lower), tied);
    expect(lower[1]).toEqual([1, 0, 0]);
  });

  // Three draws cannot all pull away from each other by more than a half: the least eigenvalue of n equal correlations
  // r is 1 + (n - 1) r.
  it.each([
    [-0.5, true],
    [-0.51, false],
    [-1, false],
  ])('of three draws with correlation %d among all exists: %s', (r, exists) => {
    const matrix = mixingMatrix([
      [1, r, r],
      [r, 1, r],
      [r, r, 1],
    ]);
    expect(matrix !== null).toBe(exists);
  });

  it('is refused where two that are the same lean differently on a third', () => {
    expect(
      mixingMatrix([
        [1, 1, 0.5],
        [1, 1, 0.4],
        [0.5, 0.4, 1],
      ]),
    ).toBeNull();
  });
});
