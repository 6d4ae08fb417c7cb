import { describe, it } from 'vitest';
import { dudewiczDalalConstant } from '../../../src/statistics/selection/dudewicz-dalal.ts';
import { expectPrinted } from '../printed.ts';

describe('the constant of Dudewicz and Dalal', () => {
  // O06: Dudewicz and Dalal (1975); A. M. Law, Simulation Modeling and Analysis, chapter 10.
  it.each([
    [0.9, [1.89575, 2.34227, 2.58339, 2.74709, 2.87038, 2.96896, 3.05091, 3.12093, 3.182]],
    [0.95, [2.45247, 2.87162, 3.10109, 3.25801, 3.37675, 3.47201, 3.55142, 3.61941, 3.6788]],
  ])('with 20 runs first at %d is the table', (confidence, row) => {
    for (const [i, h] of row.entries()) expectPrinted(dudewiczDalalConstant(i + 2, 20, confidence), h);
  });

  // As Rinott's: twice a Cauchy variable.
  it('has its closed form for two systems and two runs', () => {
    expectPrinted(dudewiczDalalConstant(2, 2, 0.9), 2 * Math.tan(0.4 * Math.PI));
  });
});
