import type { Fill, Sampler } from './distributions/distribution.ts';

/** Many purposes draw only a few times in a run: the first block is small, the later ones larger. */
const FIRST = 8;
const LARGER = 4;
const LARGEST = 256;

const NONE = new Float64Array(0);

/**
 * Draws ahead in blocks and hands the draws out one by one: draw number k is the same as if it were drawn when asked
 * for. So whatever `fill` draws from must serve nobody else. One tight loop draws a block, and every sampler is
 * the same few instructions whatever its law, which the engine's hot calls need to be fast. Draws nothing before
 * the first call.
 */
export function inBlocks(fill: Fill): Sampler {
  let values = NONE;
  let at = 0;
  const refill = () => {
    const size = values.length === 0 ? FIRST : Math.min(LARGER * values.length, LARGEST);
    if (values.length < size) values = new Float64Array(size);
    fill(values);
    at = 0;
  };
  return () => {
    if (at === values.length) refill();
    return values[at++]!;
  };
}
