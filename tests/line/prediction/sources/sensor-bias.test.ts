import { expect, it } from 'vitest';
import { single } from '../../../../src/line/prediction/predict-feature.ts';
import { modelOf } from '../cell.ts';

// Reads 2 °C too high, so the heater is 2 °C too low: -2 x -0.1 mm.
it('a sensor that reads too high leaves the setting as much too low, and adds no variation', () => {
  const model = modelOf({
    settings: '{ heater: { target: 150 °C, sensor-bias: 2 °C } }',
    rim: 'gains: { heater: -0.1 mm/°C }',
  });
  expect(model.mean(single('rim'))).toBeCloseTo(10.2, 12);
  expect(model.shifts(single('rim'))).toEqual([{ name: 'heater sensor', shift: expect.closeTo(0.2, 12) }]);
  expect(model.sd(single('rim'))).toBe(0);
});
