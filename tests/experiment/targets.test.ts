import { describe, expect, it } from 'vitest';
import { targetsMet } from '../../src/experiment/targets.ts';
import { MEASURES, type Measure, type MeasureKey } from '../../src/line/measures.ts';
import { outcome } from '../report/fake.ts';

const measure = (key: MeasureKey) =>
  MEASURES.find((one) => one.key === key)! as Measure & { readonly key: MeasureKey };
const met = (key: MeasureKey, limit: number, values: readonly (number | undefined)[]) =>
  targetsMet(
    [{ measure: measure(key), limit }],
    ['one'],
    values.map((value, i) => outcome('one', i + 1, value === undefined ? {} : { [key]: value })),
  )[0]!.rows[0];

describe('how often a target is met', () => {
  it('is at least where more is better, at most where less is, the limit itself met', () => {
    expect(met('throughput_per_h', 40, [39, 40, 41])).toMatchObject({ met: 2, share: { value: 2 / 3 } });
    expect(met('scrap_rate', 0.02, [0.01, 0.02, 0.03])).toMatchObject({ met: 2 });
  });

  it('is not missed by rounding: 0.1 + 0.2 is more than 0.3 by what a computer adds', () => {
    expect(met('scrap_rate', 0.3, [0.1 + 0.2])).toMatchObject({ met: 1 });
    expect(met('throughput_per_h', 7 * (1 / 3600) * 3600, [7])).toMatchObject({ met: 1 });
    expect(met('throughput_per_h', 0, [0])).toMatchObject({ met: 1 });
  });

  // R. G. Newcombe (1998), Statistics in Medicine 17, 857-872, table I, the score interval (from memory).
  it.each([
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("%d of %d runs have Wilson's interval as published", (hits, of, lower, upper) => {
    const { share } = met(
      'fit_rate',
      0.5,
      Array.from({ length: of }, (_, i) => (i < hits ? 0.9 : 0.1)),
    )!;
    expect(share).toMatchObject({ level: 0.95, runs: of, method: 'Wilson' });
    // Printed with four decimals.
    expect(share.lower).toBeCloseTo(lower, 4);
    expect(share.upper).toBeCloseTo(upper, 4);
  });

  it('counts a run without a value as one that missed, and a policy without any as none', () => {
    expect(met('lead_time_s', 60, [50, undefined])).toMatchObject({
      met: 1,
      without: 1,
      share: { value: 0.5 },
    });
    expect(met('lead_time_s', 60, [undefined, undefined])).toBeUndefined();
  });

  it('has no interval by one run', () => {
    expect(met('fit_rate', 0.5, [0.9])!.share).toMatchObject({ value: 1, lower: null, upper: null });
  });
});
