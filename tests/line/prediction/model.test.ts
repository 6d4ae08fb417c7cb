import { describe, expect, it } from 'vitest';
import { single } from '../../../src/line/prediction/predict-feature.ts';
import { modelOf } from './cell.ts';

/** Contributions as standard deviations in µm, by name. */
const inMicrometres = (found: readonly { name: string; variance: number }[]) =>
  Object.fromEntries(found.map(({ name, variance }) => [name, Math.round(Math.sqrt(variance) * 1e6) / 1e3]));

describe('the model of dimensions', () => {
  // Variances of independent terms add, each times the square of its gain; worked by hand, mm.
  it('takes every source with its gain', () => {
    const model = modelOf({
      thickness: '{ nominal: 0.5 mm, lot-sd: 0.01 mm, own-sd: 0.004 mm }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 2 °C }, press: { target: 80 kPa } }',
      rim: 'own-sd: 0.05 mm, sheet-sd: 0.02 mm, lot-sd: 0.03 mm, gains: { heater: -0.1 mm/°C, press: 9 mm/kPa, thickness: 1.5 mm/mm }',
    });
    expect(inMicrometres(model.contributions(single('rim')))).toEqual({
      own: 50,
      sheet: 20,
      lot: 30,
      'heater by cycle': 200,
      'thickness by lot': 15,
      'thickness by sheet': 6,
    });
    const names = model.contributions(single('rim')).map(({ name }) => name);
    expect(names[0]).toBe('heater by cycle');
    expect(model.sd(single('rim'))).toBeCloseTo(
      Math.sqrt(0.05 ** 2 + 0.02 ** 2 + 0.03 ** 2 + 0.2 ** 2 + 0.015 ** 2 + 0.006 ** 2),
      12,
    );
  });

  it('starts from the mould less the shrinkage, and from the nominal of a mate', () => {
    const model = modelOf({ rim: 'mould: 10.1 mm, shrinkage: 1 %' });
    expect(model.mean(single('rim'))).toBeCloseTo(9.999, 12);
    expect(model.mean(single('frame.groove'))).toBe(10);
    expect(
      model.mean(
        new Map([
          ['frame.groove', 1],
          ['rim', -1],
        ]),
      ),
    ).toBeCloseTo(0.001, 12);
  });

  // Offsets 0, 0, 0.3, 0.1: mean 0.1, variance (0.01 + 0.01 + 0.04 + 0) / 4 = 0.015.
  it('counts cavities as so many cases', () => {
    const model = modelOf({ perSheet: 4, rim: 'cavities: [0 mm, 0 mm, 0.3 mm, 0.1 mm], own-sd: 0.2 mm' });
    expect(model.mean(single('rim'))).toBeCloseTo(10.1, 12);
    const [own, cavity] = model.contributions(single('rim'));
    expect(own).toEqual({ name: 'own', variance: expect.closeTo(0.04, 12) });
    expect(cavity).toEqual({ name: 'cavity', variance: expect.closeTo(0.015, 12) });
    const conditions = model.conditions([single('rim')]);
    expect(conditions.map(({ share, mean }) => [share, Math.round(mean[0]! * 10)])).toEqual([
      [0.25, 100],
      [0.25, 100],
      [0.25, 103],
      [0.25, 101],
    ]);
    for (const { covariance } of conditions) expect(covariance[0]![0]).toBeCloseTo(0.04, 12);
  });

  // Two formed features follow one heater: covariance is the product of what each gets of it, 0.2 x -0.1.
  it('has features vary together that follow one source, and no others', () => {
    const model = modelOf({
      settings: '{ heater: { target: 150 °C, cycle-sd: 1 °C } }',
      rim: 'own-sd: 0.05 mm, sheet-sd: 0.02 mm, gains: { heater: 0.2 mm/°C }',
      others: `      lip: { nominal: 5 mm, made-at: forming, own-sd: 0.1 mm, sheet-sd: 0.02 mm, gains: { heater: -0.1 mm/°C } }
      tab: { nominal: 5 mm, made-at: trimming, own-sd: 0.3 mm }`,
    });
    const conditions = model.conditions(['rim', 'lip', 'tab'].map(single));
    expect(conditions).toHaveLength(1);
    const { share, covariance } = conditions[0]!;
    expect(share).toBe(1);
    const close = (value: number) => expect.closeTo(value, 12);
    expect(covariance).toEqual([
      [close(0.0025 + 0.0004 + 0.04), close(-0.02), 0],
      [close(-0.02), close(0.01 + 0.0004 + 0.01), 0],
      [0, 0, close(0.09)],
    ]);
  });

  // cov(x, y) = rho sd sd for each kind of variation by itself, and kinds add; worked by hand.
  it('has features vary together by their correlations, own, sheet and lot, and those of mates', () => {
    const model = modelOf({
      rim: 'own-sd: 0.05 mm, sheet-sd: 0.02 mm, lot-sd: 0.01 mm',
      others:
        '      tab: { nominal: 5 mm, made-at: trimming, own-sd: 0.04 mm, sheet-sd: 0.03 mm, lot-sd: 0.02 mm }',
      correlations: '[{ of: [rim, tab], own: 0.6, sheet: -0.5, lot: 1 }]',
      frame:
        'groove: { nominal: 10 mm, own-sd: 0.1 mm, lot-sd: 0.2 mm }\n      slot: { nominal: 5 mm, own-sd: 0.3 mm, lot-sd: 0.1 mm }',
      mateCorrelations: '[{ of: [groove, slot], own: 0.25, lot: -1 }]',
    });
    const [{ covariance }] = model.conditions(['rim', 'tab', 'frame.groove', 'frame.slot'].map(single)) as [
      ReturnType<typeof model.conditions>[number],
    ];
    expect(covariance[0]![1]).toBeCloseTo(0.6 * 0.05 * 0.04 - 0.5 * 0.02 * 0.03 + 0.01 * 0.02, 12);
    expect(covariance[1]![1]).toBeCloseTo(0.04 ** 2 + 0.03 ** 2 + 0.02 ** 2, 12);
    expect(covariance[2]![3]).toBeCloseTo(0.25 * 0.1 * 0.3 - 0.2 * 0.1, 12);
    expect(covariance[0]![2]).toBe(0);
    const apart = new Map([
      ['rim', 1],
      ['tab', -1],
    ]);
    // 0.05^2 + 0.04^2 - 2 x 0.6 x 0.05 x 0.04 = 0.0017.
    expect(model.contributions(apart).find(({ name }) => name === 'own')!.variance).toBeCloseTo(0.0017, 12);
  });

  // A delivery that shrinks by 0.1 % more makes a mould of 200 mm give 0.2 mm less.
  it('takes the shrinkage of a delivery times the mould', () => {
    const model = modelOf({
      sheet: 'shrinkage: { lot-sd: 0.1 % }',
      rim: 'mould: 200 mm, shrinkage: 2 %',
      others:
        '      tab: { nominal: 5 mm, made-at: forming, mould: 5 mm }\n      lip: { nominal: 5 mm, made-at: forming }',
    });
    expect(inMicrometres(model.contributions(single('rim')))).toEqual({ 'shrinkage by lot': 200 });
    expect(model.sd(single('tab'))).toBeCloseTo(0.005, 12);
    expect(model.sd(single('lip'))).toBe(0);
  });

  it('leaves out cases that alter nothing asked for', () => {
    const model = modelOf({ perSheet: 2, rim: 'cavities: [0 mm, 0.3 mm]' });
    expect(model.conditions([single('frame.groove')])).toHaveLength(1);
    expect(model.conditions([single('rim')])).toHaveLength(2);
  });
});
