import { describe, expect, it } from 'vitest';
import { DimensionModel } from '../../../src/line/prediction/model.ts';
import { predictFeature } from '../../../src/line/prediction/predict-feature.ts';
import { cell } from './cell.ts';

function rimOf(rim: string, perSheet = 1) {
  const scenario = cell({ rim, perSheet });
  return predictFeature(scenario.parts[0]!.features[0]!, new DimensionModel(scenario));
}

describe('what a feature should become', () => {
  // D08: parts per million outside two-sided limits of a centred process; D. C. Montgomery, Introduction to Statistical
  // Quality Control, process fallout table.
  it.each([
    [1, 2699.8],
    [1.1, 966.848],
    [1.2, 318.217],
    [1.33333, 63.3425],
    [1.5, 6.79535],
    [1.66667, 0.573303],
    [2, 0.00197318],
  ])('at a capability of %d leaves %d ppm outside', (cp, ppm) => {
    const { pp, ppk, outside } = rimOf(`tolerance: ${3 * cp} mm, own-sd: 1 mm`);
    expect(pp).toBeCloseTo(cp, 6);
    expect(ppk).toBeCloseTo(cp, 6);
    expect(Math.abs((outside! * 1e6) / ppm - 1)).toBeLessThan(2e-4);
  });

  // D09: a capability of 2 with the mean off by 1.5 standard deviations leaves 3.39767 ppm (six-sigma convention).
  it('off its aim has a smaller Ppk, and what is outside follows', () => {
    const { mean, pp, ppk, outside } = rimOf('mould: 11.5 mm, tolerance: 6 mm, own-sd: 1 mm');
    expect(mean).toBe(11.5);
    expect(pp).toBeCloseTo(2, 9);
    expect(ppk).toBeCloseTo(1.5, 9);
    expect(outside! * 1e6).toBeCloseTo(3.39767, 3);
  });

  // Half of the parts 1 to either side, limits 2 either way, own spread 1: 1 - (F(1) - F(-3)) = 0.1586553 + 0.0013499
  // (any table of the normal law). A single normal law of the same variance would leave 0.1573.
  it('of several cavities is a mixture, not one normal law', () => {
    const { sd, outside } = rimOf('tolerance: 2 mm, own-sd: 1 mm, cavities: [-1 mm, 1 mm]', 2);
    expect(sd).toBeCloseTo(Math.SQRT2, 12);
    expect(outside).toBeCloseTo(0.1600052, 6);
  });

  it('has no capability without limits, and one without bound where nothing varies', () => {
    expect(rimOf('own-sd: 1 mm')).toMatchObject({ pp: null, ppk: null, outside: null });
    expect(rimOf('tolerance: 1 mm')).toMatchObject({ sd: 0, pp: Number.POSITIVE_INFINITY, outside: 0 });
  });
});
