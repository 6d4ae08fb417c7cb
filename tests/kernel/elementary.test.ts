import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { exp, ln, ln1p } from '../../src/kernel/elementary.ts';

const number = new Float64Array(1);
const whole = new BigInt64Array(number.buffer);
const placeOf = (x: number) => {
  number[0] = x;
  return whole[0]!;
};

/** How many representable numbers lie between two of the same sign. */
function apart(one: number, other: number): number {
  const steps = placeOf(one) - placeOf(other);
  return Number(steps < 0n ? -steps : steps);
}

const positive = fc.double({ min: 0, minExcluded: true, noNaN: true, noDefaultInfinity: true });
/** Near 1, where a logarithm loses its digits if it is not taken with care. */
const nearOne = fc
  .tuple(fc.double({ min: -0.5, max: 0.5, noNaN: true }), fc.nat(50))
  .map(([x, bits]) => 1 + x / 2 ** bits);

// The engine's own functions are good to 1 unit in the last place, and so are ours: at most 2 apart.
test('the logarithm is that of a general library', () => {
  fc.assert(
    fc.property(fc.oneof(positive, nearOne), (x) => {
      expect(apart(ln(x), Math.log(x))).toBeLessThanOrEqual(2);
    }),
    { numRuns: 20_000 },
  );
});

test('the exponential is that of a general library', () => {
  const power = fc.oneof(
    fc.double({ min: -745, max: 709.7, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
  );
  fc.assert(
    fc.property(power, (x) => {
      expect(apart(exp(x), Math.exp(x))).toBeLessThanOrEqual(2);
    }),
    { numRuns: 20_000 },
  );
});

test('the logarithm of 1 + x keeps the digits of a small x', () => {
  const small = fc
    .tuple(fc.double({ min: -0.9, max: 0.9, noNaN: true }), fc.nat(60))
    .map(([x, bits]) => x / 2 ** bits);
  fc.assert(
    fc.property(small, (x) => {
      expect(Object.is(ln1p(x), Math.log1p(x)) || apart(ln1p(x), Math.log1p(x)) <= 4).toBe(true);
    }),
    { numRuns: 20_000 },
  );
});

// M. Abramowitz and I. A. Stegun (1964), Handbook of Mathematical Functions, table 1.1, from memory.
it.each([
  [ln(2), '0.69314718055994531'],
  [ln(3), '1.09861228866810969'],
  [ln(10), '2.30258509299404568'],
  [exp(1), '2.71828182845904524'],
  [exp(-1), '0.36787944117144232'],
])('%s is %s by the handbook', (found, printed) => {
  expect(apart(found, Number(printed))).toBeLessThanOrEqual(1);
});

test('they say what the platform says where there is no ordinary answer', () => {
  for (const x of [0, -0, 1, -1, Number.POSITIVE_INFINITY, Number.NaN, 5e-324, Number.MAX_VALUE])
    expect(ln(x), `ln ${x}`).toBe(Math.log(x));
  for (const x of [0, -0, 710, -746, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN])
    expect(exp(x), `exp ${x}`).toBe(Math.exp(x));
  for (const x of [0, -1, -2, Number.POSITIVE_INFINITY, Number.NaN])
    expect(ln1p(x), `ln1p ${x}`).toBe(Math.log1p(x));
});
