import { describe, expect, it } from 'vitest';
import { Actuator } from '../../src/line/actuator.ts';

const rules = { step: 0, lowest: Number.NEGATIVE_INFINITY, highest: Number.POSITIVE_INFINITY, delay: 0 };

function asked(to: number, given: Partial<typeof rules>): number {
  const actuator = new Actuator({ ...rules, ...given });
  actuator.ask(to, 0);
  return actuator.inForce(0);
}

describe('an actuator', () => {
  it.each([
    [1.24, 1],
    [1.26, 1.5],
    [-0.3, -0.5],
    [0.1, 0],
  ])('moves by whole steps of a half: %d becomes %d', (to, got) => {
    expect(asked(to, { step: 0.5 })).toBeCloseTo(got, 12);
  });

  it.each([
    [9, 7],
    [-9, -5],
    [3, 3],
  ])('stays between -5 and 7: %d becomes %d', (to, got) => {
    expect(asked(to, { lowest: -5, highest: 7 })).toBe(got);
  });

  it.each([
    // The last whole step within the limits.
    [9, 0.4, 0.9, 0.8],
    [-9, 0.4, 0.9, -0.8],
    // A limit that is a whole number of steps away is reached, though 0.7 / 0.1 is a hair below 7.
    [9, 0.1, 0.7, 0.7],
  ])('asked for %d goes by steps of %d no further than %d: to %d', (to, step, limit, got) => {
    expect(asked(to, { step, lowest: -limit, highest: limit })).toBeCloseTo(got, 12);
  });

  it('reaches each target asked for after the delay, in order', () => {
    const actuator = new Actuator({ ...rules, delay: 20 });
    actuator.ask(1, 100);
    expect(actuator.inForce(119.9)).toBe(0);
    actuator.ask(2, 110);
    expect(actuator.inForce(120)).toBe(1);
    expect(actuator.inForce(129)).toBe(1);
    expect(actuator.inForce(130)).toBe(2);
    actuator.ask(3, 200);
    actuator.ask(4, 201);
    // Nobody looked in between.
    expect(actuator.inForce(500)).toBe(4);
  });
});
