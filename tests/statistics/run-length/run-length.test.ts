import { describe, expect, it } from 'vitest';
import { type ChartSpec, chartOf } from '../../../src/statistics/charts/chart-of.ts';
import type { RunRule } from '../../../src/statistics/charts/run-rules.ts';
import { runLength } from '../../../src/statistics/run-length/run-length.ts';
import { expectMean } from '../../outside-checks/by-simulation.ts';
import { normals } from '../normals.ts';

const shewhart = (limit: number, meanOf = 1, runRules: RunRule[] = []): ChartSpec => ({
  ...{ chart: 'shewhart', limit, runRules, meanOf },
});
const cusum = (
  slack: number,
  limit: number,
  side: 'up' | 'down' | 'both' = 'both',
  headStart = 0,
): ChartSpec => ({ chart: 'cusum', slack, limit, headStart, side, meanOf: 1 });
const ewma = (weight: number, limit: number): ChartSpec => ({ chart: 'ewma', weight, limit, meanOf: 1 });

/** Compares run lengths at each shift, to a relative error. */
function expectLengths(spec: ChartSpec, lengths: Readonly<Record<string, number>>, within: number): void {
  for (const [shift, length] of Object.entries(lengths)) {
    const found = runLength(spec, Number(shift))!;
    expect(Math.abs(found / length - 1), `${shift} sigma: ${found}, expected ${length}`).toBeLessThan(within);
  }
}

/** Half of the last digit that is printed, as a share of the smallest value. */
const PRINTED = (half: number, least: number) => half / least;

describe('the mean run length of a Shewhart chart', () => {
  it('S01: of single readings is that of a geometric law: Shewhart (1931); Montgomery', () => {
    expectLengths(shewhart(3), { 0: 370.398, 0.5: 155.224, 1: 43.8947, 2: 6.30296, 3: 2 }, 1e-5);
  });

  it('S02: of means of five, counted in means: Montgomery', () => {
    const means = shewhart(3, 5);
    expectLengths(means, { 0.5: 5 * 33.4008, 1: 5 * 4.49531, 1.5: 5 * 1.56649 }, 1e-5);
  });

  // C. W. Champ and W. H. Woodall (1987), Technometrics 29, 393-399, table 1, rules C1 with C2 (2 of 3), C3 (4 of 5) and
  // C4 (8 in a row); from memory, to the printed two decimals.
  it.each<[RunRule[], number]>([
    [['2-of-3'], 225.44],
    [['4-of-5'], 166.05],
    [['8-in-a-row'], 152.73],
    [['2-of-3', '4-of-5'], 132.89],
    [['2-of-3', '8-in-a-row'], 122.05],
    [['4-of-5', '8-in-a-row'], 105.78],
    [['2-of-3', '4-of-5', '8-in-a-row'], 91.75],
  ])('with the run rules %j and no shift is the published one', (rules, length) => {
    expectLengths(shewhart(3, 1, rules), { 0: length }, PRINTED(0.006, length));
  });
});

describe('the mean run length of a CUSUM chart', () => {
  it('S03: k=0.5, h=4: J. M. Lucas and R. B. Crosier (1982), Technometrics 24, table 1', () => {
    expectLengths(
      cusum(0.5, 4),
      {
        ...{ 0: 167.684, 0.25: 74.224, 0.5: 26.6302, 0.75: 13.2851, 1: 8.38313, 1.5: 4.74717 },
        ...{ 2: 3.34277, 2.5: 2.61952, 3: 2.19448, 4: 1.70846, 5: 1.30874 },
      },
      1e-5,
    );
  });

  it('S04: one-sided k=0.5, h=3: D. Brook and D. A. Evans (1972), Biometrika 59, section 4.3', () => {
    expectLengths(cusum(0.5, 3, 'up'), { 0: 117.596, 1.5: 3.74911 }, 1e-5);
    expectLengths(cusum(0.5, 3, 'down'), { 0: 117.596, '-1.5': 3.74911 }, 1e-5);
  });

  it('S05: one-sided k=0.25, h=8, shift 2.5, and with the sum starting at 0.1', () => {
    // The printed digits end at 1e-7: the same equation solved with NumPy gives 4.150083726 and 4.106158835 at any order.
    expectLengths(cusum(0.25, 8, 'up'), { 2.5: 4.1500836225 }, 1e-7);
    expectLengths(cusum(0.25, 8, 'up', 0.1 / 8), { 2.5: 4.1061588131 }, 1e-7);
  });

  it('S06: k=0.5, h=5: Montgomery; Lucas and Crosier (1982)', () => {
    expectLengths(
      cusum(0.5, 5),
      {
        ...{ 0: 465.444, 0.25: 139.494, 0.5: 37.9961, 0.75: 17.0483, 1: 10.376, 1.5: 5.74722 },
        ...{ 2: 4.00887, 2.5: 3.11369, 3: 2.57325, 4: 2.01257, 5: 1.6938 },
      },
      1e-5,
    );
  });

  it('with a head start of half, h=4: Lucas and Crosier (1982), table 2, to the printed digits, from memory', () => {
    expectLengths(cusum(0.5, 4, 'both', 0.5), { 0: 149 }, PRINTED(0.5, 149));
    expectLengths(cusum(0.5, 4, 'both', 0.5), { 0.25: 62.7, 0.5: 20.1 }, PRINTED(0.05, 20.1));
    expectLengths(cusum(0.5, 4, 'both', 0.5), { 0.75: 8.97, 1: 5.29, 1.5: 2.86 }, PRINTED(0.005, 2.86));
  });

  it('S07: the approximation of D. Siegmund (1985), b = h + 1.166, is within its stated error', () => {
    // The references put the approximation at 938.222 one-sided and 469.111 two-sided beside the exact 465.444.
    const b = 5 + 1.166;
    const siegmund = (Math.exp(2 * 0.5 * b) - 2 * 0.5 * b - 1) / (2 * 0.5 ** 2);
    expect(siegmund).toBeCloseTo(938.222, 2);
    expect(siegmund / 2).toBeCloseTo(469.111, 2);
    expectLengths(cusum(0.5, 5, 'up'), { 0: siegmund }, 0.01);
  });

  it.each([
    [0.25, 8.00829],
    [0.5, 4.77383],
    [1, 2.51626],
    [1.5, 1.6041],
  ])('S08: k=%d needs the limit of D. M. Hawkins (1993) for a length of 370', (slack, expected) => {
    let [low, high] = [0.5, 12];
    while (high - low > 1e-7) {
      const limit = (low + high) / 2;
      if (runLength(cusum(slack, limit), 0)! < 370) low = limit;
      else high = limit;
    }
    expect(Math.abs(low / expected - 1)).toBeLessThan(1e-5);
  });
});

describe('the mean run length of an EWMA chart', () => {
  it('S09: weight .5, limit 3.071: J. M. Lucas and M. S. Saccucci (1990), Technometrics 32, table 3', () => {
    expectLengths(
      ewma(0.5, 3.071),
      {
        ...{ 0: 499.906, 0.25: 254.785, 0.5: 88.7954, 0.75: 35.9133, 1: 17.4766, 1.5: 6.5262 },
        ...{ 2: 3.628, 2.5: 2.49727, 3: 1.92567, 3.5: 1.57658, 4: 1.33613, 5: 1.07311 },
      },
      1e-5,
    );
  });

  it('S10: weight .5, limit 2: S. V. Crowder (1987), Technometrics 29, table 1', () => {
    expectLengths(
      ewma(0.5, 2),
      { 0: 26.4519, 0.5: 11.895, 1: 4.9064, 1.5: 2.80119, 2: 1.94522, 3: 1.26221, 4: 1.04568 },
      1e-5,
    );
  });

  it('S11: weight .25, limit 3, shift 1', () => {
    expectLengths(ewma(0.25, 3), { 1: 11.154267016 }, 1e-9);
  });

  it('of weight 1 is that of a Shewhart chart with the same limit', () => {
    for (const shift of [0, 1, 2.5]) {
      expect(runLength(ewma(1, 3), shift)! / runLength(shewhart(3), shift)!).toBeCloseTo(1, 9);
    }
  });
});

// Theory against the chart itself, told of normal numbers: what no table at hand has.
describe('the mean run length by theory is that of the chart', { timeout: 60_000 }, () => {
  it.each<[string, ChartSpec, number]>([
    ['CUSUM with a head start', cusum(0.5, 5, 'both', 0.5), 1],
    ['CUSUM with a head start', cusum(0.5, 3, 'both', 0.5), 0],
    ['CUSUM of means of four', { ...cusum(0.5, 4), meanOf: 4 }, 0.5],
    ['EWMA of low weight', ewma(0.05, 2.5), 0.5],
    ['Shewhart with run rules', shewhart(3, 1, ['2-of-3', '4-of-5', '8-in-a-row']), 0.5],
    ['Shewhart with run rules within a narrow limit', shewhart(1.5, 1, ['2-of-3', '8-in-a-row']), 0.2],
  ])('%s', (_, spec, shift) => {
    const next = normals(7);
    const chart = chartOf(spec);
    const lengths = Array.from({ length: 30_000 }, () => {
      chart.restart();
      let length = 1;
      while (!chart.next(next() + shift)) length++;
      return length;
    });
    expectMean(lengths, runLength(spec, shift)!, 0.02);
  });
});
