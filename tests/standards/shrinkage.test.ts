import { describe, expect, it } from 'vitest';
import { mouldFor, partFrom } from '../../src/standards/shrinkage.ts';

describe('the shrinkage allowance', () => {
  // T09: geometry, mould = part/(1 - s); the shop rule part x (1 + s) gives 201.2.
  it('asks for a mould of 201.207 mm for a part of 200 mm that shrinks by 0.6 %', () => {
    expect(mouldFor(200, 0.006)).toBeCloseTo(201.207, 3);
    expect(mouldFor(200, 0.006)).toBeCloseTo(201.2, 1);
    expect(partFrom(201.207, 0.006)).toBeCloseTo(200, 3);
  });
});
