import { describe, expect, it } from 'vitest';
import { observe } from '../../../src/experiment/observe.ts';
import { formingOf } from '../../../src/line/prediction/deviations.ts';
import { predictForming } from '../../../src/line/prediction/predict-forming.ts';
import { expectMean } from '../../outside-checks/by-simulation.ts';
import { cell } from './cell.ts';

function formingPredicted(given: Parameters<typeof cell>[0]) {
  const scenario = cell(given);
  return predictForming(formingOf(scenario)[0]!, scenario);
}

const HEATER =
  '{ heater: { target: 150 °C, cycle-sd: 3 °C, wander: { sd: 4 °C, pull-back: 5 min }, sensor-bias: 5 °C } }';

describe('what forming should make of sheet', () => {
  // N(145, 5): below 140 lies F(-1) = 0.1586553, above 155 F(-2) = 0.0227501 (any table of the normal law).
  it('counts parts formed too cold and too hot', () => {
    const { incomplete, webbed, thin, wall } = formingPredicted({
      settings: HEATER,
      forming: 'window: { setting: heater, from: 140 °C, to: 155 °C }',
    });
    expect(incomplete).toBeCloseTo(0.1586553, 6);
    expect(webbed).toBeCloseTo(0.0227501, 6);
    expect([thin, wall]).toEqual([null, null]);
  });

  it('counts only what the window names', () => {
    const found = formingPredicted({
      settings: '{ heater: { target: 150 °C } }',
      forming: 'window: { setting: heater, from: 150 °C }',
    });
    expect(found).toEqual({ incomplete: 0, webbed: null, thin: null, wall: null });
  });

  // A sheet of 1 mm, sd 0.05, drawn by 2: 0.5 and 0.025 mm; below 0.475 lies F(-1).
  it('divides the thickness of the sheet by the draw ratio', () => {
    const { thin, wall } = formingPredicted({
      thickness: '{ nominal: 1 mm, lot-sd: 0.03 mm, own-sd: 0.04 mm }',
      forming: 'wall: { draw-ratio: 2, least: 0.475 mm }',
    });
    expect(wall!.mean).toBeCloseTo(0.5, 9);
    expect(wall!.sd).toBeCloseTo(0.025, 9);
    expect(thin).toBeCloseTo(0.1586553, 6);
  });

  // Above its target the setting, sd 2, thins by 1 % each degree: the mean of its positive part is 2 / sqrt(2 pi). Thinner
  // than 0.98 x 0.5 mm where it lies above 2 degrees: F(-1), less what is above 4 and so webbed, F(-2).
  it('thins the wall above the target, and counts one flaw a part', () => {
    const given = {
      thickness: '{ nominal: 1 mm }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C } }',
      forming:
        'window: { setting: heater, to: 154 °C }\n    wall: { draw-ratio: 2, least: 0.49 mm, thinning: 1 %/°C }',
    };
    const { thin, wall, webbed } = formingPredicted(given);
    expect(webbed).toBeCloseTo(0.0227501, 6);
    expect(thin).toBeCloseTo(0.1586553 - 0.0227501, 5);
    expect(wall!.mean).toBeCloseTo(0.5 * (1 - (0.01 * 2) / Math.sqrt(2 * Math.PI)), 9);
  });

  // Uniform from 0 to 6 degrees above the target, over 3 h: a third lies above 4.
  it('spreads a drift over the run', () => {
    const { webbed } = formingPredicted({
      run: 'run: { warm-up: 0 s, length: 3 h, seeds: 1 }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 1 °C, drift: 2 °C/h } }',
      forming: 'window: { setting: heater, to: 154 °C }',
    });
    expect(Math.abs(webbed! - 1 / 3)).toBeLessThan(0.01);
  });

  it('as the line does', () => {
    const given = {
      run: 'run: { warm-up: 0 s, length: 6 h, seeds: 1 }',
      thickness: '{ nominal: 1 mm, own-sd: 0.04 mm }',
      settings: HEATER.replace('5 min', '1 min'),
      forming:
        'window: { setting: heater, from: 140 °C, to: 152 °C }\n    wall: { draw-ratio: 2, least: 0.48 mm, thinning: 1 %/°C }',
    };
    const scenario = cell(given);
    const predicted = formingPredicted(given);
    const seen = Array.from({ length: 20 }, (_, i) => observe(scenario, i + 1).forming.get('forming')!);
    for (const key of ['incomplete', 'webbed', 'thin'] as const)
      expectMean(
        seen.map((run) => run[key] / run.sheets),
        predicted[key]!,
        0.08,
        key,
      );
    const { mean, sd } = predicted.wall!;
    expectMean(
      seen.map(({ walls }) => walls.spread()!.mean),
      mean,
      0.01,
      'mean wall',
    );
    expectMean(
      seen.map(({ walls }) => walls.spread()!.variance + (walls.spread()!.mean - mean) ** 2),
      sd ** 2,
      0.05,
      'variance of the wall',
    );
  });
});
