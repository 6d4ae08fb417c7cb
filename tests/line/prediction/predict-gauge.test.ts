import { describe, expect, it } from 'vitest';
import { DimensionModel } from '../../../src/line/prediction/model.ts';
import { predictGauging, predictOff } from '../../../src/line/prediction/predict-gauge.ts';
import type { SpecOf } from '../../../src/scenario/stations.ts';
import { cell } from './cell.ts';

function gaugeOf(given: Parameters<typeof cell>[0]) {
  const scenario = cell(given);
  const at = scenario.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
  const model = new DimensionModel(scenario);
  const specs = scenario.parts[0]!.features;
  return {
    features: at.measures.map((reading) =>
      predictGauging(reading, specs.find(({ name }) => name === reading.name)!, model),
    ),
    off: predictOff(at, scenario, model),
  };
}

describe('what a gauge should make of parts', () => {
  // D17: limits at two standard deviations of the part, gauge a quarter of the part's (JCGM 106:2012).
  it('errs as the bivariate normal law says', () => {
    const { features, off } = gaugeOf({
      rim: 'tolerance: 2 mm, own-sd: 1 mm',
      measures: 'rim: { repeatability: 0.25 mm }',
    });
    const [rim] = features;
    expect(rim!.badPassed! / 0.00800608).toBeCloseTo(1, 5);
    expect(rim!.goodRejected! / 0.0148509).toBeCloseTo(1, 5);
    expect(1 - rim!.off!).toBeCloseTo(0.947655, 6);
    expect(off).toBeCloseTo(rim!.off!, 9);
    // 0.25 / sqrt(1 + 0.25^2).
    expect(rim!.errorShare).toBeCloseTo(0.2425356, 6);
  });

  // Two independent features, each read within limits of 1.96 sd of its readings in 0.95 of cases: 1 - 0.95^2.
  it('takes a part off limits when any feature is', () => {
    const { off } = gaugeOf({
      rim: 'tolerance: 1.959964 mm, own-sd: 0.6 mm',
      others: '      tab: { nominal: 5 mm, tolerance: 1.959964 mm, made-at: trimming, own-sd: 0.8 mm }',
      measures: 'rim: { repeatability: 0.8 mm }\n      tab: { repeatability: 0.6 mm }',
    });
    expect(off).toBeCloseTo(0.0975, 5);
  });

  // Readings 1 too high of parts N(0, 1) within limits of 2: 1 - (F(1) - F(-3)).
  it('counts a bias', () => {
    const { off, features } = gaugeOf({
      rim: 'tolerance: 2 mm, own-sd: 1 mm',
      measures: 'rim: { repeatability: 0 mm, bias: 1 mm }',
    });
    expect(off).toBeCloseTo(0.1600052, 6);
    expect(features[0]!.off).toBeCloseTo(0.1600052, 6);
    expect(features[0]!.errorShare).toBe(0);
  });

  // 10 mm x 0.1 mm/mm/°C x 1 °C make readings 1 too high, as above; a bias of -1 makes up for them: 1 - (F(2) - F(-2)).
  it('counts the warmth of the part', () => {
    const read = (extra: string) =>
      gaugeOf({
        rim: 'tolerance: 2 mm, own-sd: 1 mm, expands: 100 mm/m/°C',
        measures: `rim: { repeatability: 0 mm, warm-by: 1 °C${extra} }`,
      });
    const warm = read('');
    expect(warm.off).toBeCloseTo(0.1600052, 6);
    expect(warm.features[0]!.off).toBeCloseTo(0.1600052, 6);
    expect(read(', bias: -1 mm').off).toBeCloseTo(0.0455003, 6);
  });

  it('judges nothing without limits', () => {
    const { features, off } = gaugeOf({ rim: 'own-sd: 3 mm', measures: 'rim: { repeatability: 4 mm }' });
    expect(features).toEqual([
      { errorShare: expect.closeTo(0.8, 12), categories: 1, off: null, badPassed: null, goodRejected: null },
    ]);
    expect(off).toBeNull();
  });

  // 0.6 and 0.8 make 1; of parts with sd 2 that is 1 / sqrt(5), and 1.41 x 2 / 1 categories (AIAG, Measurement Systems Analysis).
  it('adds repeatability and reproducibility, and counts distinct categories', () => {
    const { features } = gaugeOf({
      rim: 'tolerance: 3 mm, own-sd: 2 mm',
      measures: 'rim: { repeatability: 0.6 mm, reproducibility: 0.8 mm }',
    });
    expect(features[0]!.errorShare).toBeCloseTo(1 / Math.sqrt(5), 12);
    expect(features[0]!.categories).toBe(2);
    expect(features[0]!.off).toBeCloseTo(0.1797125, 6);
  });

  // Steps of 1 mm about 10: within 8.4 and 11.6 mm lie 9 to 11, which is read from 8.5 to 11.5: 1.5 standard deviations either way.
  it('rounds readings', () => {
    const { features, off } = gaugeOf({
      rim: 'tolerance: 1.6 mm, own-sd: 1 mm',
      measures: 'rim: { repeatability: 0 mm, resolution: 1 mm }',
    });
    expect(features[0]!.off).toBeCloseTo(0.1336144, 6);
    expect(off).toBeCloseTo(0.1336144, 6);
    expect(features[0]!.badPassed).toBeCloseTo(0, 9);
    expect(features[0]!.goodRejected).toBeCloseTo(0.1336144 - 0.1095986, 6);
  });
});
