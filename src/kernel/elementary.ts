/**
 * Logarithm and exponential by additions, multiplications and divisions alone, which IEEE 754 fixes to the last bit.
 * Those of a JavaScript engine are its own business (ECMA-262 leaves them to the implementation), and two engines do
 * differ in the last digit: a run would not be the same one in Node and in a browser.
 * Source: their Taylor series, after the argument is brought near to 1 or 0 by a power of two.
 */

/** ln 2 in two parts; the first has 32 bits, so that a whole number of them is exact. */
const { LN2, SQRT2 } = Math;
const LN2_HIGH = 0.6931471806019545;
const LN2_LOW = -4.2009150726810846e-11;
/** Lifts a subnormal number to a normal one. */
const LIFT_BITS = 54;
const LIFT = 0x40_0000_0000_0000;

const number = new Float64Array(1);
const halves = new Uint32Array(number.buffer);
/** The half that holds the exponent. */
const UPPER = new Uint8Array(new Uint32Array([1]).buffer)[0] === 1 ? 1 : 0;

/** 2 to a whole power from -1022 to 1023. */
function powerOfTwo(power: number): number {
  number[0] = 0;
  halves[UPPER] = (power + 1023) << 20;
  return number[0];
}

/** 2 atanh(s) / s - 2 for t, the square of s, up to 0.03: every second term by itself, as a processor does two at once. */
function tail(t: number): number {
  const u = t * t;
  const one = 2 / 3 + u * (2 / 7 + u * (2 / 11 + u * (2 / 15 + u * (2 / 19))));
  const other = 2 / 5 + u * (2 / 9 + u * (2 / 13 + u * (2 / 17 + u * (2 / 21))));
  return t * (one + t * other);
}

/** The natural logarithm of `x`, to 1 unit in the last place; minus infinity of 0, not a number below. */
export function ln(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  const lifted = x < 2.2250738585072014e-308;
  number[0] = lifted ? x * LIFT : x;
  const upper = halves[UPPER]!;
  let power = (upper >>> 20) - 1023 - (lifted ? LIFT_BITS : 0);
  halves[UPPER] = (upper & 0xf_ffff) | 0x3ff0_0000;
  let m = number[0];
  if (m > SQRT2) {
    m /= 2;
    power++;
  }
  const f = m - 1;
  const s = f / (2 + f);
  // 2 atanh(s), with f in front, which is exact.
  return power * LN2_HIGH + (f - (s * (f - tail(s * s)) - power * LN2_LOW));
}

/** e to the power of `x`, to 1 unit in the last place. */
export function exp(x: number): number {
  if (x > 709.782712893384) return Number.POSITIVE_INFINITY;
  if (x < -745.1332191019412) return 0;
  if (Number.isNaN(x)) return x;
  const power = Math.floor(x / LN2 + 0.5);
  const r = x - power * LN2_HIGH - power * LN2_LOW;
  const q = r * r;
  // The terms of even power from the second on, and of odd power from the third on, but for r squared.
  const even =
    1 / 2 + q * (1 / 24 + q * (1 / 720 + q * (1 / 40_320 + q * (1 / 3_628_800 + q / 479_001_600))));
  const odd =
    1 / 6 + q * (1 / 120 + q * (1 / 5_040 + q * (1 / 362_880 + q * (1 / 39_916_800 + q / 6_227_020_800))));
  const value = 1 + (r + q * (even + r * odd));
  if (power < -1021) return value * powerOfTwo(power + LIFT_BITS) * powerOfTwo(-LIFT_BITS);
  return power > 1023 ? value * powerOfTwo(power - 1) * 2 : value * powerOfTwo(power);
}

/** ln(1 + x), with the digits that x has. Source: W. Kahan's correction for what 1 + x rounds off, from memory. */
export function ln1p(x: number): number {
  const sum = 1 + x;
  return sum === 1 || sum === Number.POSITIVE_INFINITY ? x : sum === 0 ? ln(0) : (ln(sum) * x) / (sum - 1);
}

export const square = (x: number): number => x * x;
