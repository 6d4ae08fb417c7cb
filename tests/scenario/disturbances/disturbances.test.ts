import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { EVERY } from '../../disturbance/every-disturbance.ts';
import { expectRefused, refuses } from '../sample.ts';

describe('a disturbance of any kind', () => {
  it('is read into base units', () => {
    const { disturbances } = parseScenario(EVERY, 'cell.yaml');
    const of = (name: string) => disturbances.find((it) => it.name === name);
    const constant = (value: number) => ({ distribution: 'constant', value });
    expect(of('off')).toMatchObject({ by: constant(0.2), spread: constant(1.5) });
    expect(of('cold')).toMatchObject({ by: { law: constant(-6), dimension: 'temperature' } });
    expect(of('slow belt')).toMatchObject({ to: constant(0.5), fades: 600 });
    expect(of('rush')).toMatchObject({
      after: { parts: 50, of: 'forming' },
      burst: { times: 2, apart: constant(300) },
    });
  });
});

describe('what a disturbance names', () => {
  refuses(
    [
      ['feature: rim, by', 'feature: ¤rimm, by', '"rimm" is no feature of the part; did you mean "rim"?'],
      [
        'feature: rim, by',
        'feature: ¤frame.groove, by',
        '{ disturbs: lot, stock: frame, feature: groove, ... }',
      ],
      [
        'feature: rim, by: 0.2 mm, spread: 150 %',
        'feature: tab, by: 0.2 mm, spread: ¤150 %',
        '"tab" has no variation of its own; give it "own-sd"',
      ],
      [
        'station: gauging, feature: rim, bias',
        'station: ¤forming, feature: rim, bias',
        'expected one that does gauge',
      ],
      [
        'station: gauging, feature: rim, bias',
        'station: gauging, feature: ¤tab, bias',
        '"tab" is no feature that "gauging" measures',
      ],
      ['reader, station: assembly', 'reader, station: ¤gauging', '"gauging" has no reader; give it "reader"'],
      ['reader, station: assembly', 'reader, station: ¤packing', 'expected one that does gauge or assemble'],
      ['stock: sheet, feature', 'stock: ¤shet, feature', '"shet" is no stock; did you mean "sheet"?'],
      [
        'feature: thickness',
        'feature: ¤thicknes',
        '"thicknes" is no feature of "sheet"; did you mean "thickness"?',
      ],
      [
        'speed, station: forming',
        'speed, station: ¤formin',
        '"formin" is no station; did you mean "forming"?',
      ],
      [
        'health, station: assembly, breakdown: torn',
        'health, station: assembly, breakdown: ¤worn',
        'did you mean "torn"?',
      ],
      [
        'health, station: assembly, breakdown: torn, as-often',
        'health, station: ¤packing, as-often',
        '"packing" never breaks down',
      ],
      ['crew: fitter, away: 1', 'crew: ¤fiter, away: 1', '"fiter" is no crew; did you mean "fitter"?'],
      ['crew: fitter, away: 1', 'crew: fitter, away: ¤2', '"fitter" are only 1; expected 1 or fewer'],
      ['conveyor, station: packing', 'conveyor, station: ¤assembly', 'no conveyor leads to "assembly"'],
      ['parts: 50, of: forming', 'parts: 50, of: ¤formng', '"formng" is no station; did you mean "forming"?'],
    ],
    EVERY,
  );

  it('must be there to be disturbed', () => {
    const text = EVERY.replace(/demand: \{ every.*\n/, '').replace('disturbs: demand', 'disturbs: ¤demand');
    expectRefused(text, 'there are no orders to disturb; give "demand"');
  });
});

describe('the size of a disturbance', () => {
  refuses(
    [
      ['to: 70 %, ramp', 'to: ¤0 %, ramp', 'above zero'],
      ['to: 60 %, at', 'to: ¤130 %, at', 'from 0 % to 100 %'],
      ['by: 0.2 mm, spread: 150 %', 'by: ¤0.2, spread: 150 %', '0.2 has no unit'],
      [
        'off: { disturbs: feature, feature: rim, by: 0.2 mm, spread: 150 %,',
        'off: ¤{ disturbs: feature, feature: rim,',
        '"by" is missing: expected a length with its unit, such as 0.1 mm, or "spread"',
      ],
      ['as-often: 300 %, repairs-take: 200 %, ', 'as-often: ¤-3 %, ', 'above zero'],
      [
        'by: -6 °C',
        'by: ¤{ distribution: normal, mean: -6 °C, sd: 1 kPa }',
        'a temperature and a pressure cannot be of one distribution',
      ],
      ['by: -6 °C', 'by: ¤{ distribution: normal, mean: -6 °C, sd: -1 °C }', '"sd" must not be negative'],
      ['by: -6 °C', 'by: ¤{ distribution: uniform, low: 6 °C, high: -6 °C }', '"low" lies above "high"'],
      [
        'by: -6 °C',
        'by: { distribution: ¤exponential, mean: 6 °C }',
        'distribution: "exponential" is not known',
      ],
      [
        'to: 70 %, ramp',
        'to: { distribution: ¤normal, mean: 70 %, sd: 2 % }, ramp',
        'distribution: "normal" is not known',
      ],
      ['feature: thickness, by: 0.2 mm', 'by: ¤0.2 mm', '"by" needs "feature"'],
      ['feature: thickness, by: 0.2 mm', 'feature: ¤thickness', '"feature" goes with "by"'],
    ],
    EVERY,
  );
});

describe('when a disturbance comes', () => {
  refuses(
    [
      [
        'dim: { disturbs: reader, station: assembly, to: 60 %, at: 2 h,',
        'dim: ¤{ disturbs: reader, station: assembly, to: 60 %,',
        '"at" is missing: expected a time with its unit, such as 2 h, or "after" a count of parts',
      ],
      ['to: 60 %, at: 2 h,', 'to: 60 %, at: 2 h, after: ¤{ parts: 5 },', '"at" tells when it comes already'],
      ['parts: 50, of', 'parts: ¤0, of', 'expected a whole number from 1'],
      ['times: 2, apart', 'times: ¤1, apart', 'expected a whole number from 2'],
      ['fades: 10 min', 'fades: ¤0 s', 'above zero'],
      ['away: 1, at', 'away: 1, ¤ramp: 5 min, at', 'unknown key "ramp"'],
    ],
    EVERY,
  );
});
