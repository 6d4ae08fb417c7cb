import { describe, expect, it } from 'vitest';
import { DimensionModel } from '../../../src/line/prediction/model.ts';
import { predictFit, predictForcing, predictPair } from '../../../src/line/prediction/predict-fit.ts';
import type { SpecOf } from '../../../src/scenario/stations.ts';
import { cell } from './cell.ts';

function fitOf(given: Parameters<typeof cell>[0]) {
  const scenario = cell(given);
  const at = scenario.stations.find(({ does }) => does === 'assemble') as SpecOf<'assemble'>;
  const model = new DimensionModel(scenario);
  return {
    pairs: at.fits.map((pair) => predictPair(pair, scenario, model)),
    all: predictFit(at, scenario, model),
    forcing: predictForcing(at, scenario, model),
  };
}

/** So many pegs of one plate meet one hole; mean clearance and standard deviations in mm. */
function pegs(n: number, margin: number, sd: number, most = '100 mm') {
  const names = Array.from({ length: n }, (_, i) => `peg${i}`);
  return fitOf({
    rim: `mould: ${10 + margin} mm, own-sd: ${sd} mm`,
    frame: names.map((name) => `${name}: { nominal: 10 mm, own-sd: ${sd} mm }`).join('\n      '),
    fits: names
      .map((name) => `- { hole: rim, shaft: frame.${name}, least: 0 mm, most: ${most} }`)
      .join('\n      '),
  });
}

describe('how parts should go together', () => {
  // D10: H7/k6 at 25 mm: hole 0 to +21 um, shaft +2 to +15 um (ISO 286-2), both centred with a sixth of the tolerance as
  // standard deviation: P(clearance > 0) = Phi(2/4.11636) = 0.686469.
  it('peg in hole H7/k6 at 25 mm clears as often as the difference of two normals is positive', () => {
    const { pairs, all } = fitOf({
      frame: 'bore: { nominal: 10.0105 mm, own-sd: 0.0035 mm }',
      rim: `mould: 10.0085 mm, own-sd: ${0.013 / 6} mm`,
      fits: '- { hole: frame.bore, shaft: rim, least: 0 mm, most: 100 mm }',
    });
    expect(pairs[0]!.clearance).toBeCloseTo(0.002, 9);
    expect(pairs[0]!.sd * 1000).toBeCloseTo(4.11636, 5);
    expect(pairs[0]!.fits).toBeCloseTo(0.686469, 6);
    expect(pairs[0]!.tight).toBeCloseTo(1 - 0.686469, 6);
    expect(pairs[0]!.loose).toBeCloseTo(0, 12);
    expect(all).toBeCloseTo(0.686469, 6);
  });

  // D11: pegs that share the hole's deviation, no margin, equal standard deviations: 1/(n + 1) (Tong 1990, from memory).
  it.each([2, 3, 4, 6])('%d pegs against one hole clear together in 1/(n + 1) of cases', (n) => {
    expect(Math.abs(pegs(n, 0, 0.01).all - 1 / (n + 1))).toBeLessThan(1e-5);
  });

  // D12: with a margin of three standard deviations; one-dimensional quadrature of the one-factor model.
  it.each([
    [1, 0.983053],
    [2, 0.968795],
    [4, 0.945311],
    [8, 0.909839],
  ])('%d pegs with a margin clear together as the one-factor model says', (n, exact) => {
    expect(Math.abs(pegs(n, 0.03, 0.01).all - exact)).toBeLessThan(1e-5);
  });

  // Cavities +1 and -1 and nothing else: a clearance of 2 or 0 against limits of 1 to 3.
  it('tells cavities apart', () => {
    const { pairs, all } = fitOf({
      perSheet: 2,
      frame: 'groove: { nominal: 11 mm }',
      rim: 'cavities: [1 mm, -1 mm]',
      fits: '- { hole: frame.groove, shaft: rim, least: 1 mm, most: 3 mm }',
    });
    expect(pairs[0]).toMatchObject({ clearance: 1, sd: 1, fits: 0.5, tight: 0.5, loose: 0 });
    expect(all).toBe(0.5);
  });

  it('a clearance just at its limit fits, and is not too tight', () => {
    expect(fitOf({}).pairs[0]).toMatchObject({ clearance: 0, sd: 0, fits: 1, tight: 0, loose: 0 });
  });

  it('says what a clearance varies by, of the part and of the mate', () => {
    const { pairs } = fitOf({
      frame: 'groove: { nominal: 10 mm, own-sd: 0.2 mm, lot-sd: 0.1 mm }',
      rim: 'own-sd: 0.3 mm',
    });
    const from = pairs[0]!.from.map(({ name, variance }) => [name, Math.round(variance * 1e6) / 1e6]);
    expect(from).toEqual([
      ['own', 0.09],
      ['frame own', 0.04],
      ['frame lot', 0.01],
    ]);
  });

  // A clearance N(0.1, 0.1) within 0 to 0.3: lacks up to 0.1 mm, which 40 N close at 400 N/mm, between 1 and 2 standard
  // deviations below the mean; F(-1) - F(-2) = 0.1359051, F(-2) = 0.0227501 (any table of the normal law).
  it('presses together what lacks no more than its force closes', () => {
    const { forcing, all } = fitOf({
      frame: 'groove: { nominal: 10.1 mm, own-sd: 0.1 mm }',
      fits: '- { hole: frame.groove, shaft: rim, least: 0 mm, most: 0.3 mm }',
      forcing: '{ stiffness: 400 N/mm, limit: 40 N, damages: 20 % }',
    });
    expect(all).toBeCloseTo(0.8185946, 6);
    expect(forcing!.forced).toBeCloseTo(0.8 * 0.1359051, 6);
    expect(forcing!.damaged).toBeCloseTo(0.2 * 0.1359051, 6);
    expect(forcing!.tight).toBeCloseTo(0.0227501, 6);
  });

  // Two independent pairs like that: both at most so far off, less both fit; and neither loose, less those.
  it('presses by the tightest pair, and nothing that is loose anywhere', () => {
    const { forcing } = fitOf({
      frame: 'groove: { nominal: 10.1 mm, own-sd: 0.1 mm }\n      slot: { nominal: 5.1 mm, own-sd: 0.1 mm }',
      others: '      tab: { nominal: 5 mm, made-at: trimming }',
      fits: `- { hole: frame.groove, shaft: rim, least: 0 mm, most: 0.3 mm }
      - { hole: frame.slot, shaft: tab, least: 0 mm, most: 0.3 mm }`,
      forcing: '{ stiffness: 400 N/mm, limit: 40 N }',
    });
    const [fits, closed, notLoose] = [0.8185946, 0.8185946 + 0.1359051, 0.9772499];
    expect(forcing!.forced).toBeCloseTo(closed ** 2 - fits ** 2, 5);
    expect(forcing!.damaged).toBe(0);
    expect(forcing!.tight).toBeCloseTo(notLoose ** 2 - closed ** 2, 5);
  });

  it('without a press there is none', () => expect(fitOf({}).forcing).toBeNull());
});
