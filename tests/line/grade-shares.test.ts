import { describe, expect, it } from 'vitest';
import { gradeSharesOf } from '../../src/line/grade-shares.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { SpecOf } from '../../src/scenario/stations.ts';
import { changed } from '../scenario/sample.ts';

const MARKING = 'takes-hold: 99 %, to: gauging';
const sharesOf = (keys: string) => {
  const { stations } = parseScenario(changed(MARKING, `takes-hold: 99 %, ${keys} to: gauging`), 'cell.yaml');
  return gradeSharesOf(stations.find(({ does }) => does === 'mark') as SpecOf<'mark'>);
};
const quality = (keys: string) => sharesOf(`quality: { ${keys} },`);

function expectShares(found: readonly number[], exact: readonly number[], digits: number): void {
  for (const [i, share] of exact.entries()) expect(found[i]).toBeCloseTo(share, digits);
  expect(found.length).toBe(exact.length);
}

describe('the shares of the grades', () => {
  it('are those given, or all A', () => {
    expect(sharesOf('grades: { B: 75 %, D: 25 % },')).toEqual([0, 0.75, 0, 0.25, 0]);
    expect(sharesOf('')).toEqual([1, 0, 0, 0, 0]);
  });
});

// The grade limits of ISO/IEC 15415; values of the normal law from its tables: Phi(1) = 0.841345, Phi(2.3333) = 0.990185.
describe('the shares of the grades by quality', () => {
  const NORMAL = [0.158655, 0.341345, 0.341345, 0.14884, 0.009815];

  it('follow the normal law, however its spread is told', () => {
    // Contrast of mean 55 % and sd 15 %: limits at +1, 0, -1 and -2.3333 standard deviations.
    expectShares(quality('contrast: { mean: 55 %, sd: 15 % }'), NORMAL, 5);
    expectShares(quality('contrast: { mean: 55 %, scan-sd: 15 % }'), NORMAL, 5);
    expectShares(quality('contrast: { mean: 55 %, sd: 9 %, scan-sd: 12 % }'), NORMAL, 5);
    // Scans that do not differ are as one.
    expectShares(quality('scans: 5, contrast: { mean: 55 %, sd: 15 % }'), NORMAL, 5);
  });

  it('are those of the lowest parameter', () => {
    // A from 70 % up, and up to 6 %: each half of the marks, so a quarter both.
    const both = quality('contrast: { mean: 70 %, sd: 1 % }, axial-non-uniformity: { mean: 6 %, sd: 0.1 % }');
    expectShares(both, [0.25, 0.75, 0, 0, 0], 9);
    const perfect = quality('grid-non-uniformity: { mean: 10 % }, modulation: { mean: 90 % }');
    expect(perfect).toEqual([1, 0, 0, 0, 0]);
  });

  it('are those of the mean over the scans', () => {
    // Scans are A or B alike often. Two Bs make a B; of three, the mean is at least 3.5 with two As or three.
    expectShares(quality('scans: 2, contrast: { mean: 70 %, scan-sd: 1 % }'), [0.75, 0.25, 0, 0, 0], 9);
    expectShares(quality('scans: 3, contrast: { mean: 70 %, scan-sd: 1 % }'), [0.5, 0.5, 0, 0, 0], 9);
  });

  it('respect that scans of one mark are alike', () => {
    // Half of the variance is the mark's own: two scans are both below the limit with chance 1/4 + asin(1/2)/(2 pi) = 1/3
    // (W. F. Sheppard 1899, the orthant probability, from memory).
    const alike = quality('scans: 2, contrast: { mean: 70 %, sd: 1 %, scan-sd: 1 % }');
    expectShares(alike, [2 / 3, 1 / 3, 0, 0, 0], 3);
    // Of three at least two lie above in half of the cases, by symmetry.
    const three = quality('scans: 3, contrast: { mean: 70 %, sd: 1 %, scan-sd: 1 % }');
    expectShares(three, [1 / 2, 1 / 2, 0, 0, 0], 3);
    const two = quality(
      'scans: 2, contrast: { mean: 70 %, sd: 1 %, scan-sd: 1 % }, axial-non-uniformity: { mean: 6 %, sd: 0.1 %, scan-sd: 0.1 % }',
    );
    // With a second parameter of the same law a scan is A with chance 1/4, both are with (1/3)^2, and at least one with
    // 2/4 - 1/9.
    expectShares(two, [1 / 2 - 1 / 9, 1 / 2 + 1 / 9, 0, 0, 0], 3);
  });

  it('by unused error correction follow the binomial law', () => {
    // A 10x10 symbol has 8 codewords, 5 of them for correction: none wrong is A, one leaves 0.6 and is B, two leave 0.2,
    // which is F (M03, M06).
    const found = quality('unused-error-correction: { symbol: data-matrix 10x10, wrong-codewords: 10 % }');
    const [none, one] = [0.9 ** 8, 8 * 0.1 * 0.9 ** 7];
    expectShares(found, [none, one, 0, 0, 1 - none - one], 9);
  });
});
