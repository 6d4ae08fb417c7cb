import { exp, ln } from '../elementary.ts';
import type { Stream } from '../streams.ts';

/** Layers of equal area under the density exp(-x), the lowest with the tail beyond R. */
const LAYERS = 256;
/** Where the tail begins, and the area of each layer; both from the source. */
const R = 7.69711747013105;
const AREA = 3.949659822581572e-3;
/** The stream has 32 bits. */
const STEPS = 0x1_0000_0000;

/** By layer: draws below this many steps lie under the density whatever else; length of a step; density at its end. */
const sure = new Float64Array(LAYERS);
const step = new Float64Array(LAYERS);
const density = new Float64Array(LAYERS);

function cutLayers(): void {
  let edge = R;
  const lowest = AREA / exp(-R);
  sure[0] = (R / lowest) * STEPS;
  step[0] = lowest / STEPS;
  density[0] = 1;
  step[LAYERS - 1] = R / STEPS;
  density[LAYERS - 1] = exp(-R);
  for (let i = LAYERS - 2; i >= 1; i--) {
    const inner = -ln(AREA / edge + exp(-edge));
    sure[i + 1] = (inner / edge) * STEPS;
    step[i] = inner / STEPS;
    density[i] = exp(-inner);
    edge = inner;
  }
}
cutLayers();

/**
 * A draw of the exponential law of mean 1, with one number of the stream nearly always and without a logarithm.
 * Source: G. Marsaglia and W. W. Tsang (2000), The ziggurat method for generating random variables, Journal of
 * Statistical Software 5(8). The lowest 8 of the number's 32 bits choose the layer.
 */
export function standardExponential(stream: Stream): number {
  for (;;) {
    const steps = stream() * STEPS;
    const layer = (steps >>> 0) & (LAYERS - 1);
    const x = steps * step[layer]!;
    if (steps < sure[layer]!) return x;
    // 1 - u is never 0, so the logarithm is finite.
    if (layer === 0) return R - ln(1 - stream());
    const height = density[layer]! + stream() * (density[layer - 1]! - density[layer]!);
    if (height < exp(-x)) return x;
  }
}
