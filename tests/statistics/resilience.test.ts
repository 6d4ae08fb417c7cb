import { describe, expect, it } from 'vitest';
import { depthOf, lossOf, recoveryOf, resilienceOf, rollingLevel } from '../../src/statistics/resilience.ts';

const EXACT = { share: 0, least: 0 };

/** Mean levels of bins of the given width, from the integral of the level. */
function means(integral: (t: number) => number, end: number, width: number): Float64Array {
  const bins = Math.round(end / width);
  return Float64Array.from(
    { length: bins },
    (_, i) => (integral((i + 1) * width) - integral(i * width)) / width,
  );
}
/** How far apart, of what is published. */
const off = (value: number, published: number) => Math.abs(value / published - 1);
const whole = (level: number, like: ArrayLike<number>) => Float64Array.from(like, () => level);

describe('a drop of 40 and a straight recovery in 10 days', () => {
  // M. Bruneau et al. (2003), Earthquake Spectra 19, 733-752; their loss is the integral of 100 - Q.
  const width = 5e-5;
  const quality = means((t) => 60 * t + (t < 10 ? 2 * t * t : 40 * t - 200), 12, width);
  const twin = whole(100, quality);

  it('loses 200', () => {
    expect(off(lossOf(quality, twin, 1) * width, 200)).toBeLessThan(1e-5);
  });

  it('has a robustness of 60 and a rapidity of 4 a day', () => {
    const depth = depthOf(quality, twin, 1)!;
    // The first bin is half its width further up the slope.
    expect(off(100 - depth, 60)).toBeLessThan(1e-5);
    // Rounding in the last bins is no shortfall.
    const days = recoveryOf(quality, twin, 1, { share: 0, least: 1e-6 })! * width;
    expect(off(depth / days, 4)).toBeLessThan(1e-5);
  });
});

it('a drop of 0.4 that recovers in 20 of 100 leaves a normalised resilience of 0.96', () => {
  // G. P. Cimellaro, A. M. Reinhorn, M. Bruneau (2010), Engineering Structures 32, 3639-3649.
  const quality = means((t) => (t < 20 ? 0.6 * t + 0.01 * t * t : t - 4), 100, 0.01);
  expect(off(resilienceOf(quality, whole(1, quality), 1)!, 0.96)).toBeLessThan(1e-5);
});

it('an exponential recovery loses a tau and is back within 5 points at tau ln(a/5)', () => {
  // As before; a = 40, tau = 6, over a time after which 4e-7 of the loss is still to come.
  const width = 1e-4;
  const quality = means((t) => 100 * t - 240 * (1 - Math.exp(-t / 6)), 90, width);
  const twin = whole(100, quality);
  expect(off(lossOf(quality, twin, 1) * width, 240)).toBeLessThan(1e-5);
  const back = recoveryOf(quality, twin, 1, { share: 0.05, least: 0 })! * width;
  expect(off(back, 12.4766)).toBeLessThan(1e-5);
});

describe('with a rolling window', () => {
  const twin = [2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2];
  const stopped = [2, 2, 2, 0, 0, 0, 2, 2, 2, 2, 2, 2];

  it('the level is the mean of the last bins, from the first whole window on', () => {
    expect([...rollingLevel([1, 2, 3, 5], 2)]).toEqual([1.5, 2.5, 4]);
    expect([...rollingLevel([1], 2)]).toEqual([]);
  });

  it.each([1, 2, 3, 5, 20])('a loss that nothing makes up is the difference of the totals: %d', (window) => {
    expect(lossOf(stopped, twin, window)).toBeCloseTo(6, 12);
    expect(lossOf([2, 2, 0, 0], [2, 2, 2, 2], window)).toBeCloseTo(4, 12);
    expect(lossOf([0, 2, 2, 2], [2, 2, 2, 2], window)).toBeCloseTo(2, 12);
  });

  it('what is made up later is not set against the loss', () => {
    // Windows of one bin fall short by 2 twice; the 4 of bins 5 and 6 come too late.
    expect(lossOf([2, 2, 0, 0, 4, 4, 2], [2, 2, 2, 2, 2, 2, 2], 1)).toBe(4);
    expect(resilienceOf([2, 2, 0, 0, 4, 4, 2], [2, 2, 2, 2, 2, 2, 2], 1)).toBeCloseTo(1 - 4 / 14, 12);
  });

  it('the depth is the largest shortfall of a whole window', () => {
    expect(depthOf(stopped, twin, 1)).toBe(2);
    expect(depthOf(stopped, twin, 4)).toBe(1.5);
    expect(depthOf([3, 3], [2, 2], 1)).toBe(0);
    expect(depthOf([1], [2], 2)).toBeNull();
  });

  it('it has recovered at the end of the last window that is short by more than the tolerance', () => {
    // Bins 3 to 5 miss their 2. The last window of 2 that misses something is that of bins 5 and 6.
    expect(recoveryOf(stopped, twin, 2, EXACT)).toBe(4);
    // Half a window is let pass: the last that is short is that of bins 4 and 5.
    expect(recoveryOf(stopped, twin, 2, { share: 0.5, least: 0 })).toBe(3);
    expect(recoveryOf(stopped, twin, 2, { share: 0, least: 2 })).toBe(3);
    expect(recoveryOf(stopped, twin, 2, { share: 1, least: 0 })).toBe(0);
  });

  it('the longest of several times counts, and one that is not over at the end has none', () => {
    const twice = [2, 0, 2, 2, 0, 0, 2, 2];
    expect(recoveryOf(twice, twin.slice(0, 8), 1, EXACT)).toBe(2);
    expect(recoveryOf([...twice, 0], twin.slice(0, 9), 1, EXACT)).toBeNull();
    expect(recoveryOf([0, 2, 2], [2, 2, 2], 1, EXACT)).toBe(1);
    expect(recoveryOf([2, 2], [2, 2], 1, EXACT)).toBe(0);
  });

  it('a course like its twin loses nothing', () => {
    expect(lossOf(twin, twin, 3)).toBe(0);
    expect(depthOf(twin, twin, 3)).toBe(0);
    expect(resilienceOf(twin, twin, 3)).toBe(1);
    expect(resilienceOf([0], [0], 1)).toBeNull();
  });
});
