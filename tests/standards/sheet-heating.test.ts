import { describe, expect, it } from 'vitest';
import { sheetTime, timeFor } from '../../src/standards/sheet-heating.ts';

describe('the heating time of a sheet', () => {
  // T05: J. L. Throne, papers on sheet heating; Technology of Thermoforming (1996), chapter 3.
  it.each([
    [1, 2],
    [2, 4],
  ] as const)('to the power of %d grows %d-fold when the thickness doubles', (power, factor) => {
    const law = sheetTime(90, 4, power);
    expect(timeFor(law, 4)).toBeCloseTo(90, 12);
    expect(timeFor(law, 8) / timeFor(law, 4)).toBeCloseTo(factor, 12);
  });
});
