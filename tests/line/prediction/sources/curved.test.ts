import { describe, expect, it } from 'vitest';
import { single } from '../../../../src/line/prediction/predict-feature.ts';
import { expectPredicted } from '../by-simulation.ts';
import { cell, modelOf } from '../cell.ts';

const rim = single('rim');
const byName = (given: Parameters<typeof modelOf>[0]) =>
  Object.fromEntries(
    modelOf(given)
      .contributions(rim)
      .map(({ name, variance }) => [name, variance]),
  );

describe('what features follow in a curve', () => {
  // d normal, sd 2: E(c d^2) = c s^2 = 0.04; var(g d) = (0.1 x 2)^2, var(c d^2) = 2 c^2 s^4; any text on the normal law.
  it('a square adds its mean and its variance', () => {
    const given = {
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C } }',
      rim: 'gains: { heater: 0.1 mm/°C }, curvatures: { heater: 0.01 mm/°C² }',
    };
    expect(modelOf(given).mean(rim)).toBeCloseTo(10.04, 5);
    expect(byName(given)).toEqual({
      'heater by cycle': expect.closeTo(0.04, 12),
      'heater squared': expect.closeTo(2 * 0.01 ** 2 * 16, 12),
    });
  });

  // With d = -3 + 2 z: g d + c d^2 has the slope g + 2 c b = 0.1 - 0.06 at the middle, and the mean g b + c (b^2 + s^2).
  it('a sensor that reads wrong alters the slope', () => {
    const given = {
      settings: '{ heater: { target: 150 °C, sensor-bias: 3 °C, cycle-sd: 2 °C } }',
      rim: 'gains: { heater: 0.1 mm/°C }, curvatures: { heater: 0.01 mm/°C² }',
    };
    expect(modelOf(given).mean(rim)).toBeCloseTo(10 - 0.3 + 0.01 * (9 + 4), 5);
    expect(byName(given)['heater by cycle']).toBeCloseTo((0.04 * 2) ** 2, 12);
  });

  // var(k x y) = k^2 sx^2 sy^2 of independent x and y, mean 0; uncorrelated with either.
  it('a product adds the product of the variances', () => {
    const given = {
      thickness: '{ nominal: 0.5 mm, lot-sd: 0.03 mm, own-sd: 0.04 mm }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C }, press: { target: 80 kPa, cycle-sd: 3 kPa } }',
      rim: 'gains: { press: 0.01 mm/kPa }, interactions: [{ of: [heater, press], gain: 0.02 mm/°C/kPa }, { of: [thickness, heater], gain: 1 mm/mm/°C }]',
    };
    expect(modelOf(given).mean(rim)).toBeCloseTo(10, 9);
    expect(byName(given)).toEqual({
      'press by cycle': expect.closeTo(0.03 ** 2, 12),
      'heater with press': expect.closeTo((0.02 * 2 * 3) ** 2, 12),
      'heater with thickness': expect.closeTo((0.05 * 2) ** 2, 12),
    });
  });

  // 0.05 d^2 with d of sd 2 lies above 0.2 mm where |z| > 1: 0.3173105 (any table of the normal law).
  it('its shape is not normal', () => {
    const model = modelOf({
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C } }',
      rim: 'own-sd: 0.01 mm, curvatures: { heater: 0.05 mm/°C² }',
    });
    const above = model
      .conditions([rim])
      .reduce((sum, { share, mean }) => sum + (mean[0]! > 10.2 ? share : 0), 0);
    expect(Math.abs(above - 0.3173105)).toBeLessThan(0.02);
  });

  it('and the line makes such parts', () => {
    expectPredicted(
      cell({
        run: 'run: { warm-up: 0 s, length: 4 h, seeds: 1 }',
        thickness: '{ nominal: 0.5 mm, own-sd: 0.04 mm }',
        settings:
          '{ heater: { target: 150 °C, cycle-sd: 1 °C, sensor-bias: 1 °C, wander: { sd: 1 °C, pull-back: 2 min } }, press: { target: 80 kPa, cycle-sd: 3 kPa } }',
        rim: 'tolerance: 0.5 mm, own-sd: 0.05 mm, gains: { heater: 0.1 mm/°C, thickness: 2 mm/mm }, curvatures: { heater: 0.04 mm/°C² }, interactions: [{ of: [heater, press], gain: 0.02 mm/°C/kPa }]',
        others:
          '      lip: { nominal: 5 mm, tolerance: 0.1 mm, made-at: forming, own-sd: 0.05 mm, curvatures: { thickness: 30 mm/mm² } }',
      }),
      ['rim', 'lip'],
      20,
    );
  });

  // Uniform from 0 to b = 3.6 over the hour: c d^2 has the mean c (b^2 / 3 + s^2); at each time the slope is 2 c d, of
  // mean square 4 c^2 b^2 / 3; the middles c d^2 have the variance c^2 b^4 (1/5 - 1/9), by nine times a bit less.
  it('takes what drifts at the same time with it, and tells apart what comes from what', () => {
    const given = {
      run: 'run: { warm-up: 0 s, length: 1 h, seeds: 1 }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C, drift: 3.6 °C/h } }',
      rim: 'curvatures: { heater: 0.01 mm/°C² }',
    };
    expect(modelOf(given).mean(rim)).toBeCloseTo(10 + 0.01 * (3.6 ** 2 / 3 + 4), 6);
    expect(byName(given)).toEqual({
      'heater by cycle': expect.closeTo(((4 * 0.01 ** 2 * 3.6 ** 2) / 3) * 4, 12),
      'heater squared': expect.closeTo(2 * 0.01 ** 2 * 16, 12),
      'drift of heater': expect.closeTo(0.01 ** 2 * 3.6 ** 4 * (1 / 5 - 1 / 9), 4),
    });
    const model = modelOf(given);
    const middle = model.mean(rim);
    const variance = model
      .conditions([rim])
      .reduce((sum, { share, mean }) => sum + share * (mean[0]! - middle) ** 2, 0);
    expect(variance).toBeCloseTo(modelOf(given).sd(rim) ** 2, 6);
  });

  it('and the line makes such parts, too', () =>
    expectPredicted(
      cell({
        run: 'run: { warm-up: 30 min, length: 4 h, seeds: 1 }',
        settings:
          '{ heater: { target: 150 °C, cycle-sd: 1 °C, drift: 0.5 °C/h }, press: { target: 80 kPa, cycle-sd: 2 kPa, drift: -1 kPa/h } }',
        rim: 'tolerance: 0.5 mm, own-sd: 0.05 mm, gains: { heater: 0.1 mm/°C, press: 0.02 mm/kPa }, curvatures: { heater: 0.03 mm/°C² }',
      }),
      ['rim'],
      20,
    ));
});
