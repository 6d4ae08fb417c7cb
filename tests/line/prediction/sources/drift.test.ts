import { expect, it } from 'vitest';
import { single } from '../../../../src/line/prediction/predict-feature.ts';
import { expectPredicted } from '../by-simulation.ts';
import { cell, modelOf } from '../cell.ts';

const given = {
  run: 'run: { warm-up: 1 h, length: 3 h, seeds: 1 }',
  settings:
    '{ heater: { target: 150 °C, drift: 2 °C/h, cycle-sd: 0.5 °C }, press: { target: 80 kPa, drift: -1 kPa/h } }',
  rim: 'tolerance: 0.6 mm, own-sd: 0.05 mm, gains: { heater: 0.1 mm/°C, press: 0.05 mm/kPa }',
};

// 0.2 - 0.05 mm an hour, on the average for 2.5 h; uniform over 3 h: variance (0.15 x 3)^2 / 12.
it('a drift counts over the run, from its start on', () => {
  const model = modelOf(given);
  expect(model.mean(single('rim'))).toBeCloseTo(10.375, 9);
  const drift = model.contributions(single('rim')).find(({ name }) => name.startsWith('drift'));
  expect(drift).toEqual({ name: 'drift of heater and press', variance: expect.closeTo(0.45 ** 2 / 12, 9) });
});

it('as the line has it', () => expectPredicted(cell(given), ['rim'], 20));
