import type { Distribution } from './distribution.ts';
import { standardNormal } from './normal.ts';

/**
 * Given by mean and standard deviation; shape (mean/sd)^2. Source: G. Marsaglia and W. W. Tsang (2000), A simple
 * method for generating gamma variables, ACM TOMS 26, 363-372; shapes below 1 by their section 6.
 */
export const gamma: Distribution<{ readonly mean: number; readonly sd: number }> = {
  mean: ({ mean }) => mean,
  variance: ({ sd }) => sd * sd,
  sampler: ({ mean, sd }, stream) => {
    const shape = (mean / sd) ** 2;
    const scale = mean / shape;
    const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    const z = standardNormal(stream);
    const draw = () => {
      for (;;) {
        const x = z();
        const t = 1 + c * x;
        const v = t * t * t;
        if (v > 0 && Math.log(1 - stream()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
      }
    };
    if (shape >= 1) return () => scale * draw();
    return () => scale * draw() * Math.exp(Math.log(1 - stream()) / shape);
  },
};
