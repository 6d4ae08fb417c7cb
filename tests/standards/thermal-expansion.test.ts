import { describe, expect, it } from 'vitest';
import { REFERENCE_TEMPERATURE, thermalMovement } from '../../src/standards/thermal-expansion.ts';

describe('thermal movement', () => {
  // T11: the worked example of the tolerance page of mayfieldplastics.com: 20 in, 20 °F, 5e-5 per °F.
  it('of 20 in that become 20 °F warmer at 5e-5 per °F is 0.020 in', () => {
    expect(thermalMovement(20, 5e-5, 20)).toBeCloseTo(0.02, 12);
    expect(thermalMovement(20, 5e-5, -20)).toBeCloseTo(-0.02, 12);
  });

  // The same in mm and °C: 20 in are 508 mm, 20 °F are 100/9 °C, 5e-5 per °F is 9e-5 per °C; 0.020 in are 0.508 mm.
  it('is the same in millimetres and degrees Celsius', () => {
    expect(thermalMovement(508, 9e-5, 100 / 9)).toBeCloseTo(0.508, 12);
  });

  // ISO 1:2016.
  it('starts from 20 °C', () => {
    expect(REFERENCE_TEMPERATURE).toBe(20);
  });
});
