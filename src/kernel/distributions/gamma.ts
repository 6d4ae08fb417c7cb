import { exp, ln, square } from '../elementary.ts';
import type { Stream } from '../streams.ts';
import type { Distribution } from './distribution.ts';
import { normalDeviate } from './normal.ts';

/** A draw of the gamma law of shape `d` + 1/3 (1 or more) and scale 1; `c` is 1 / sqrt(9 d). */
function standardGamma(d: number, c: number, stream: Stream): number {
  for (;;) {
    const x = normalDeviate(stream);
    const t = 1 + c * x;
    const v = t * t * t;
    if (v <= 0) continue;
    const u = 1 - stream();
    // Their squeeze: lies within the second condition and spares its two logarithms nearly always.
    if (u < 1 - 0.0331 * (x * x) * (x * x)) return d * v;
    if (ln(u) < 0.5 * x * x + d - d * v + d * ln(v)) return d * v;
  }
}

/**
 * Given by mean and standard deviation; shape (mean/sd)^2. Source: G. Marsaglia and W. W. Tsang (2000), A simple
 * method for generating gamma variables, ACM TOMS 26, 363-372; shapes below 1 by their section 6.
 */
export const gamma: Distribution<{ readonly mean: number; readonly sd: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ sd }) => sd * sd,
  fill: ({ mean, sd }, stream) => {
    const shape = square(mean / sd);
    const scale = mean / shape;
    const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    if (shape >= 1) {
      return (values) => {
        for (let i = 0; i < values.length; i++) values[i] = scale * standardGamma(d, c, stream);
      };
    }
    return (values) => {
      for (let i = 0; i < values.length; i++) {
        values[i] = scale * standardGamma(d, c, stream) * exp(ln(1 - stream()) / shape);
      }
    };
  },
};
