import { expect, it } from 'vitest';
import { single } from '../../../../src/line/prediction/predict-feature.ts';
import { expectPredicted } from '../by-simulation.ts';
import { cell, modelOf } from '../cell.ts';

// In the long run a wandering setting has its own standard deviation: (3 x 0.1)^2 beside (2 x 0.1)^2 by cycle.
it('a setting wanders besides varying from cycle to cycle', () => {
  const model = modelOf({
    settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C, wander: { sd: 3 °C, pull-back: 5 min } } }',
    rim: 'gains: { heater: -0.1 mm/°C }',
  });
  expect(model.contributions(single('rim'))).toEqual([
    { name: 'heater wandering', variance: expect.closeTo(0.09, 12) },
    { name: 'heater by cycle', variance: expect.closeTo(0.04, 12) },
  ]);
});

it('as the line has it, with features that vary together and a sensor that reads wrong', () =>
  expectPredicted(
    cell({
      run: 'run: { warm-up: 0 s, length: 4 h, seeds: 1 }',
      settings:
        '{ heater: { target: 150 °C, cycle-sd: 1 °C, sensor-bias: 3 °C, wander: { sd: 2 °C, pull-back: 2 min } } }',
      thickness: '{ nominal: 0.5 mm, own-sd: 0.02 mm }',
      rim: 'tolerance: 0.4 mm, own-sd: 0.06 mm, gains: { heater: 0.1 mm/°C, thickness: 3 mm/mm }',
      others:
        '      lip: { nominal: 5 mm, tolerance: 0.3 mm, made-at: forming, own-sd: 0.08 mm, sheet-sd: 0.1 mm }',
      correlations: '[{ of: [rim, lip], own: 0.7 }]',
    }),
    ['rim', 'lip'],
    20,
  ));
