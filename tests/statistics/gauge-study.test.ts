import { describe, expect, it } from 'vitest';
import { studyByAnova, studyByRanges } from '../../src/statistics/gauge-study.ts';
import { AIAG_STUDY } from './aiag-study.ts';

/** Within half a unit of the last of six significant digits, to which the values are given. */
function expectSix(found: number, expected: number): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThan(5e-6);
}

describe('a gauge study', () => {
  // D15: AIAG, Measurement Systems Analysis, 3rd and 4th edition; the sums of squares 3.1673, 88.3619, 0.3590, 2.7589 and
  // 94.6471 are printed there.
  it('by analysis of variance finds what the AIAG manual finds', () => {
    const { squares, ...found } = studyByAnova(AIAG_STUDY);
    expectSix(squares.appraiser, 3.16726);
    expectSix(squares.part, 88.3619);
    expectSix(squares.interaction, 0.358982);
    expectSix(squares.equipment, 2.75893);
    expectSix(squares.total, 94.6471);
    expect(squares.pooled).toBe(true);
    expectSix(found.repeatability, 0.199933);
    expectSix(found.reproducibility, 0.226838);
    expectSix(found.gauge, 0.302372);
    expectSix(found.part, 1.04233);
    expectSix(100 * found.gaugeShare, 27.8607);
  });

  // D16: the same data and source by average and range.
  it('by average and range finds what the AIAG manual finds', () => {
    const found = studyByRanges(AIAG_STUDY);
    expectSix(found.repeatability, 0.201857);
    expectSix(found.reproducibility, 0.229667);
    expectSix(found.gauge, 0.305766);
    expectSix(found.part, 1.1046);
    expectSix(found.total, 1.14613);
    expect(100 * found.gaugeShare).toBeCloseTo(26.678, 3);
    expect(found.categories).toBe(5);
  });

  // Worked by hand. Cell means 1, 4, 3, 2 about 2.5, two trials 0.1 to either side of each. Appraisers, the rows: means 2.5
  // and 2.5, so SS 0. Parts: means 2 and 3, SS 4 x 0.5 = 2. Between cells 2 x 5 = 10, so the interaction 8; equipment
  // 8 x 0.01 with 4 degrees of freedom. Mean squares 8 and 0.02: the interaction counts, its variance is (8 - 0.02) / 2,
  // and those of appraisers and parts come out below zero.
  it('counts an interaction that is significant to reproducibility', () => {
    const cells = [
      [1, 4],
      [3, 2],
    ];
    const { squares, ...found } = studyByAnova(
      cells.map((parts) => [-0.1, 0.1].map((by) => parts.map((value) => value + by))),
    );
    expect(squares.pooled).toBe(false);
    expect(squares.interaction).toBeCloseTo(8, 9);
    expect(found.repeatability ** 2).toBeCloseTo(0.02, 9);
    expect(found.reproducibility ** 2).toBeCloseTo(7.98 / 2, 9);
    expect(found.part).toBe(0);
    expect(found.categories).toBe(0);
  });

  it('of a gauge without error leaves all to the parts', () => {
    const exact = [1, 2].map(() => [1, 2].map(() => [0, 1, 5]));
    for (const found of [studyByAnova(exact), studyByRanges(exact)]) {
      expect(found.gauge).toBe(0);
      expect(found.gaugeShare).toBe(0);
      expect(found.categories).toBe(Number.POSITIVE_INFINITY);
    }
  });
});
