import { describe, expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { cell } from '../../line/prediction/cell.ts';

describe('an explained gauge', { timeout: 30_000 }, () => {
  it('agrees with the line on readings with all that errs in them', () => {
    const { features, off } = explain(
      cell({
        run: 'run: { warm-up: 0 s, length: 4 h, seeds: 1 }',
        rim: 'tolerance: 0.25 mm, own-sd: 0.1 mm',
        measures:
          'rim: { repeatability: 0.03 mm, reproducibility: 0.03 mm, resolution: 0.02 mm, guard: 0.03 mm, bias: 0.02 mm }\n    appraisers: 4',
      }),
      40,
    ).gauges[0]!;
    const { badPassed, goodRejected } = features[0]!;
    for (const it of [features[0]!.off!, badPassed!, goodRejected!, off!]) {
      expect(it.predicted).toBeGreaterThan(0.0005);
      expect(it.differs).toBe(false);
    }
  });

  // T11: 10 mm x 2 mm/m/°C x 5 °C are 0.1 mm, one standard deviation of the part.
  it('agrees with the line on parts that are read warm', () => {
    const { off, features } = explain(
      cell({
        run: 'run: { warm-up: 0 s, length: 4 h, seeds: 1 }',
        rim: 'tolerance: 0.2 mm, own-sd: 0.1 mm, expands: 2 mm/m/°C',
        measures: 'rim: { repeatability: 0 mm, warm-by: 5 °C }',
      }),
      20,
    ).gauges[0]!;
    // Within limits of two standard deviations, read one too high: 1 - (F(1) - F(-3)).
    expect(off!.predicted).toBeCloseTo(0.1600052, 6);
    expect(off!.differs).toBe(false);
    expect(features[0]!.badPassed!.differs).toBe(false);
    expect(features[0]!.goodRejected!.differs).toBe(false);
  });

  // D19 for the plan: lots of 501 to 1200 have letter J, sample 80, at AQL 1 % up to 2; tightened up to 1 (ISO 2859-1:1999,
  // tables 1, 2-A and 2-B). At 1 % off limits 0.953447 of the lots are accepted.
  it('names the plan and agrees on the lots accepted', () => {
    // Limits at the 0.995 point of the normal law: 1 % outside.
    const { plan, off } = explain(
      cell({
        run: 'run: { warm-up: 0 s, length: 60 h, seeds: 1 }',
        rim: 'tolerance: 2.575829 mm, own-sd: 1 mm',
        gaugeBuffer: 700,
        inspection: 'acceptance: { lot: 600, aql: 1 %, rejected: scrap }',
      }),
      20,
    ).gauges[0]!;
    expect(off!.predicted).toBeCloseTo(0.01, 6);
    expect(plan).toMatchObject({
      lot: 600,
      normal: { letter: 'J', sample: 80, accept: 2, accepts: expect.closeTo(0.953447, 4) },
      tightened: { letter: 'J', sample: 80, accept: 1 },
    });
    expect(plan!.accepted.differs).toBe(false);
    expect(plan!.accepted.predicted).toBeLessThan(plan!.normal.accepts!);
    expect(explain(cell(), 1).gauges[0]!.plan).toBeNull();
  });
});
