import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/kernel/normal-quantile.ts';

interface Normal {
  cdf(x: number, mean: number, sd: number): number;
}
// The program's own declaration names only the function it uses.
const { normal } = jstat.jStat as unknown as { readonly normal: Normal };

describe('the standard normal quantile', () => {
  // Any table of the normal distribution.
  it.each([
    [0.5, 0],
    [0.75, 0.6744898],
    [0.9, 1.2815516],
    [0.95, 1.6448536],
    [0.975, 1.959964],
    [0.99, 2.3263479],
    [0.995, 2.5758293],
    [0.999, 3.0902323],
    [0.9999, 3.7190165],
    [1e-6, -4.7534243],
    [1e-9, -5.9978071],
  ])('at %d is the tabulated %d', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 6);
  });

  it('is undone by the distribution function of a general library', () => {
    for (let i = 1; i < 2000; i++) {
      const p = i / 2000;
      expect(Math.abs(normal.cdf(normalQuantile(p), 0, 1) - p)).toBeLessThan(1e-12);
    }
  });

  it('is undone in the lower tail, where the library keeps fewer digits, to what those digits allow', () => {
    for (let tens = 3; tens <= 10; tens++) {
      const p = 10 ** -tens;
      expect(Math.abs(normal.cdf(normalQuantile(p), 0, 1) - p)).toBeLessThan(1e-14 + 1e-6 * p);
    }
  });

  // The tail integral by its continued fraction (Laplace), which needs no library and is sharp far out.
  it('is undone far out by the continued fraction of the tail', () => {
    const tail = (x: number) => {
      let rest = x;
      for (let k = 200; k >= 1; k--) rest = x + k / rest;
      return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI) / rest;
    };
    for (const p of [1e-4, 1e-6, 1e-8, 1e-10, 2 ** -33, 1e-12, 1e-15, 1e-50]) {
      expect(tail(-normalQuantile(p)) / p).toBeCloseTo(1, 10);
    }
  });

  it('is odd about one half and rises throughout', () => {
    let before = Number.NEGATIVE_INFINITY;
    for (let i = 1; i < 1024; i++) {
      const p = i / 1024;
      expect(normalQuantile(1 - p)).toBe(0 - normalQuantile(p));
      expect(normalQuantile(p)).toBeGreaterThan(before);
      before = normalQuantile(p);
    }
  });

  it('joins its three approximations without a step', () => {
    for (const p of [0.075, 0.925, Math.exp(-25)]) {
      const width = p * 1e-9;
      const step = normalQuantile(p + width) - normalQuantile(p - width);
      // The slope of the quantile is 1 over the density.
      const slope = Math.sqrt(2 * Math.PI) * Math.exp(normalQuantile(p) ** 2 / 2);
      expect(step / (2 * width * slope)).toBeCloseTo(1, 4);
    }
  });
});
