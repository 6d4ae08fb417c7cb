import { describe, expect, it } from 'vitest';
import { inspectionError } from '../../src/statistics/inspection-error.ts';

const limits = { lower: -2, upper: 2 };
const of = (guard: number, error: number, more = {}) =>
  inspectionError({
    limits,
    accepted: { lower: -2 + guard, upper: 2 - guard },
    mean: 0,
    sd: 1,
    bias: 0,
    error,
    ...more,
  });

describe('inspection by a gauge that errs', () => {
  // D17 and D18: limits at two standard deviations of the part, the gauge's a quarter of it; without and with a guard band
  // of one standard deviation of the gauge (bivariate normal law, JCGM 106:2012; the usual "0.8 % and 1.5 % at 4:1").
  it.each([
    [0, 0.00800608, 0.0148509, 0.947655, 0.00844831],
    [0.25, 0.00181222, 0.045867, 0.910445, 0.00199048],
  ])(
    'with a guard band of %d takes bad for good and good for bad as published',
    (guard, bad, good, accept, among) => {
      const found = of(guard, 0.25);
      expect(Math.abs(found.falseAccept / bad - 1)).toBeLessThan(1e-5);
      expect(Math.abs(found.falseReject / good - 1)).toBeLessThan(1e-5);
      expect(Math.abs(found.accept / accept - 1)).toBeLessThan(1e-5);
      expect(Math.abs(found.falseAccept / found.accept / among - 1)).toBeLessThan(1e-5);
    },
  );

  it('errs never without an error, and with a bias alone by what lies between the shifted and the true limits', () => {
    // 0.954500: within two standard deviations, any table of the normal law.
    expect(of(0, 0).falseAccept).toBe(0);
    expect(of(0, 0).falseReject).toBeCloseTo(0, 12);
    expect(of(0, 0).accept).toBeCloseTo(0.9545, 5);
    // Readings 1 too high: accepted from -3 to 1. 0.0227501 - 0.0013499 and 0.1586553 - 0.0227501.
    const shifted = of(0, 0, { bias: 1 });
    expect(shifted.falseAccept).toBeCloseTo(0.0214002, 6);
    expect(shifted.falseReject).toBeCloseTo(0.1359052, 6);
  });

  it('keeps its sum for gauges far better and far worse than the parts', () => {
    // Whatever the gauge: good parts are those accepted, less the bad among them, plus the good ones rejected.
    for (const error of [1e-4, 0.01, 0.5, 1, 3, 30]) {
      const { falseAccept, falseReject, accept } = of(0.1, error);
      expect(accept - falseAccept + falseReject).toBeCloseTo(0.9544997, 6);
    }
  });

  it('of parts that do not differ is the law of the readings', () => {
    const right = of(0, 1, { sd: 0, mean: 1 });
    // Reading N(1, 1) within -2 to 2: 0.8413447 - 0.0013499.
    expect(right.falseAccept).toBe(0);
    expect(right.falseReject).toBeCloseTo(1 - 0.8399948, 6);
    const wrong = of(0, 1, { sd: 0, mean: 3 });
    // Reading N(3, 1) within -2 to 2: 0.1586553.
    expect(wrong.falseAccept).toBeCloseTo(0.1586553, 6);
    expect(wrong.falseReject).toBe(0);
  });
});
