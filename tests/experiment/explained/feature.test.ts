import { expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { cell } from '../../line/prediction/cell.ts';

it('a feature without a closed form has what was simulated, and why', () => {
  const [rim, tab] = explain(
    cell({
      others:
        '      tab: { nominal: 5 mm, tolerance: 1 mm, made-at: trimming, wear: { per: 1000, shift: 0.1 mm } }',
    }),
    3,
  ).features;
  expect(rim!.openBy).toBeNull();
  expect(tab).toMatchObject({
    openBy: expect.stringContaining('never renewed'),
    pp: null,
    shifts: [],
    from: [],
  });
  expect(tab!.mean).toMatchObject({ predicted: null, differs: null });
  expect(tab!.mean.simulated!.value).toBeGreaterThan(5);
  expect(tab!.outside!.predicted).toBeNull();
});

it('one with it has what moves its mean', () => {
  const { shifts } = explain(
    cell({
      settings: '{ heater: { target: 150 °C, sensor-bias: 2 °C } }',
      rim: 'gains: { heater: -0.1 mm/°C }',
    }),
    2,
  ).features[0]!;
  expect(shifts).toEqual([{ name: 'heater sensor', shift: expect.closeTo(0.2, 12) }]);
});
