import { expect, it } from 'vitest';
import { deviationsOf, driftTimes, formingOf, sdOf } from '../../../src/line/prediction/deviations.ts';
import { cell } from './cell.ts';

it('what varies, with the spread of its independent parts', () => {
  const scenario = cell({
    run: 'run: { warm-up: 1 h, length: 2 h, seeds: 1 }',
    thickness: '{ nominal: 0.5 mm, lot-sd: 0.03 mm, own-sd: 0.04 mm }',
    settings:
      '{ heater: { target: 150 °C, cycle-sd: 3 °C, wander: { sd: 4 °C, pull-back: 1 min }, sensor-bias: 2 °C, drift: 3.6 °C/h } }',
  });
  const [thickness, heater] = deviationsOf(formingOf(scenario)[0]!, scenario);
  expect(thickness).toMatchObject({ name: 'thickness', offset: 0, perSecond: 0 });
  expect(sdOf(thickness!)).toBeCloseTo(0.05, 12);
  expect(heater).toMatchObject({ name: 'heater', offset: -2, perSecond: expect.closeTo(0.001, 12) });
  expect(sdOf(heater!)).toBeCloseTo(5, 12);
  // From 1 h to 3 h.
  const times = driftTimes(scenario);
  expect(times.reduce((sum, time) => sum + time, 0) / times.length).toBeCloseTo(7200, 6);
  expect(Math.min(...times)).toBeGreaterThan(3600);
  expect(Math.max(...times)).toBeLessThan(10_800);
});
