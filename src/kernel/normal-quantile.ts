import { ln } from './elementary.ts';

/** Coefficients of the three rational approximations, lowest power first: [numerator, denominator]. */
const CENTRE = [
  [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125,
    45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
  ],
  [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867,
    39307.89580009271061, 28729.085735721942674, 5226.495278852854561,
  ],
] as const;
const SHOULDER = [
  [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
    1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
    0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
] as const;
const TAIL = [
  [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
    0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
    1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
] as const;

type Coefficients = readonly [number, number, number, number, number, number, number, number];

function polynomial(c: Coefficients, x: number): number {
  return ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0];
}

/**
 * The standard normal quantile: the z below which a share `p` of the law lies, 0 < p < 1, to about 1e-16 relative.
 * Source: M. J. Wichura (1988), Algorithm AS 241, Applied Statistics 37, 477-484 (coefficients from memory,
 * checked in the tests against the normal distribution function of a general library).
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (q >= -0.425 && q <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTRE[0], r)) / polynomial(CENTRE[1], r);
  }
  const r = Math.sqrt(-ln(q < 0 ? p : 1 - p));
  const z =
    r <= 5
      ? polynomial(SHOULDER[0], r - 1.6) / polynomial(SHOULDER[1], r - 1.6)
      : polynomial(TAIL[0], r - 5) / polynomial(TAIL[1], r - 5);
  return q < 0 ? -z : z;
}
