import { describe, expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { cell } from '../../line/prediction/cell.ts';

const PRESSED = {
  run: 'run: { warm-up: 0 s, length: 12 h, seeds: 1 }',
  frame:
    'groove: { nominal: 10 mm, class: H13, own-sd: 0.1 mm }\n      slot: { nominal: 5.1 mm, own-sd: 0.08 mm }',
  mateCorrelations: '[{ of: [groove, slot], own: 0.6 }]',
  rim: 'tolerance: 0.1 mm, own-sd: 0.05 mm',
  others: '      tab: { nominal: 5 mm, made-at: trimming, own-sd: 0.05 mm }',
  correlations: '[{ of: [rim, tab], own: -0.4 }]',
  fits: `- { hole: frame.groove, shaft: rim, least: 0 mm, most: 0.3 mm }
      - { hole: frame.slot, shaft: tab, least: 0 mm, most: 0.3 mm }`,
  forcing: '{ stiffness: 400 N/mm, limit: 40 N, damages: 20 % }',
};

describe('an explained assembly', { timeout: 30_000 }, () => {
  it('agrees with the line on what fits, what is pressed and what that spoils', () => {
    const { all, forcing, openBy } = explain(cell(PRESSED), 10).assemblies[0]!;
    expect(openBy).toBeNull();
    for (const [key, { predicted, differs }] of Object.entries({ all, ...forcing! })) {
      expect(predicted, key).toBeGreaterThan(0.01);
      expect(differs, key).toBe(false);
    }
  });

  // H13 at 10 mm is 0 to 0.22 mm (ISO 286-1, table 1); 0.11 and 0.1 mm either way of 0.11 mm, together sqrt(0.0121 + 0.01).
  it('has the limits of both sides where both have some', () => {
    const [rim, tab] = explain(cell(PRESSED), 1).assemblies[0]!.pairs;
    expect(rim!.stack!.worst).toEqual({ lower: expect.closeTo(-0.1, 9), upper: expect.closeTo(0.32, 9) });
    expect(rim!.stack!.rootSumSquare.upper).toBeCloseTo(0.11 + Math.sqrt(0.0221), 9);
    expect(tab!.stack).toBeNull();
  });

  it('predicts nothing of a pair without a closed form', () => {
    const worn = {
      ...PRESSED,
      others: '      tab: { nominal: 5 mm, made-at: trimming, wear: { per: 9, shift: 0.1 mm } }',
      correlations: '',
    };
    const { pairs, all, forcing, openBy } = explain(cell(worn), 2).assemblies[0]!;
    expect(openBy).toContain('never renewed');
    expect(pairs[0]!.fits.predicted).not.toBeNull();
    expect(pairs[1]).toMatchObject({ fits: { predicted: null, differs: null }, from: [] });
    expect(pairs[1]!.fits.simulated).not.toBeNull();
    expect(all.predicted).toBeNull();
    expect(forcing!.forced.predicted).toBeNull();
  });
});
