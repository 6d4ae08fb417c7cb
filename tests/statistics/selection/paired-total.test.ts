import { describe, expect, it } from 'vitest';
import { pairedTotal } from '../../../src/statistics/selection/paired-total.ts';
import { normals } from '../normals.ts';
import { chanceError } from '../printed.ts';

describe('two stages under common luck', () => {
  // t(.95, 9) = 1.83311 (O01); paired differences with sample variance 90/9 = 10: ceil(1.83311^2 x 10 / .25) = 135.
  it('take what the most different pair needs', () => {
    const values = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? 3 : -3));
    expect(pairedTotal([values, values.map(() => 0)], 0.95, 0.5)).toBe(135);
    expect(pairedTotal([values, values.map((x) => x + 1)], 0.95, 0.5)).toBe(10);
  });

  // Two systems: the t statement is exact but for rounding up.
  it('choose right as often as stated where the best leads by just what is worth finding', () => {
    const draw = normals(62);
    const tries = 1500;
    let right = 0;
    for (let i = 0; i < tries; i++) {
      const run = () => {
        const shared = 5 * draw();
        return [1 + shared + 2 * draw(), shared + 2 * draw()];
      };
      const runs = Array.from({ length: 6 }, run);
      const total = pairedTotal(
        [0, 1].map((system) => runs.map((own) => own[system]!)),
        0.9,
        1,
      );
      while (runs.length < total) runs.push(run());
      if (runs.reduce((sum, [one, other]) => sum + one! - other!, 0) > 0) right++;
    }
    expect(right / tries).toBeGreaterThan(0.9 - chanceError(0.9, tries));
    expect(right / tries).toBeLessThan(0.91 + chanceError(0.9, tries));
  });
});
