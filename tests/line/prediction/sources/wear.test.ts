import { describe, expect, it } from 'vitest';
import { DimensionModel } from '../../../../src/line/prediction/model.ts';
import { single } from '../../../../src/line/prediction/predict-feature.ts';
import { expectPredicted } from '../by-simulation.ts';
import { cell } from '../cell.ts';

const tab = single('tab');
const worn = (trimming: string, wear = 'shift: 0.3 mm, spread: 0.1 mm') =>
  cell({
    run: 'run: { warm-up: 0 s, length: 18181 s, seeds: 1 }',
    trimming,
    others: `      tab: { nominal: 5 mm, tolerance: 0.3 mm, made-at: trimming, own-sd: 0.05 mm, wear: { per: 100, ${wear} } }`,
  });
const CHANGED = 'set-ups: { change: { cycles: 101, takes: 1 s } }, tool: { renewed-by: [change] }';

describe('a tool that wears', () => {
  // Cuts 0 to 100 before, each as often: mean 50, mean square 50 x 201 / 3 = 3350, variance (101^2 - 1) / 12 = 850 (sums of whole numbers and of their squares).
  // The edge moves 0.003 mm and scatters by 0.001 mm a cut.
  it('moves and scatters the edge over its life', () => {
    const model = new DimensionModel(worn(CHANGED));
    expect(model.mean(tab)).toBeCloseTo(5.15, 12);
    expect(model.contributions(tab)).toEqual([
      { name: 'tool of trimming', variance: expect.closeTo(0.003 ** 2 * 850 + 0.001 ** 2 * 3350, 12) },
      { name: 'own', variance: expect.closeTo(0.0025, 12) },
    ]);
    expect(model.openBy([tab])).toBeNull();
  });

  // 36 whole lives: the first cut ends after 6 s, and one comes every 5 s.
  it('as the line has it', () => expectPredicted(worn(CHANGED), ['tab'], 20));

  it('of a short life has each age', () => {
    const model = new DimensionModel(
      worn('set-ups: { change: { cycles: 3, takes: 1 s } }, tool: { renewed-by: [change] }', 'shift: 50 mm'),
    );
    expect(model.conditions([tab]).map(({ mean }) => Math.round(mean[0]! * 1e6) / 1e6)).toEqual([5, 5.5, 6]);
  });

  it('of a life that the run decides has no closed form', () => {
    const why = (trimming: string) => new DimensionModel(worn(trimming)).openBy([tab]);
    expect(why('')).toBe('the tool of "trimming" is never renewed');
    expect(
      why('maintenance: { new: { every: 1 h, counted: clock, takes: 1 s } }, tool: { renewed-by: [new] }'),
    ).toContain('depends on the run');
    expect(new DimensionModel(worn('')).openBy([single('rim')])).toBeNull();
  });
});
