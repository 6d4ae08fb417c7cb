import { describe, expect, it } from 'vitest';
import { inBlocks } from '../../src/kernel/blocks.ts';
import { type Law, samplerOf } from '../../src/kernel/distributions/index.ts';
import { standardNormal } from '../../src/kernel/distributions/normal.ts';
import { standardExponential } from '../../src/kernel/distributions/ziggurat.ts';
import { normalQuantile } from '../../src/kernel/normal-quantile.ts';
import { type Stream, Streams } from '../../src/kernel/streams.ts';

describe('drawing in blocks', () => {
  it('hands out what was drawn, each once and in order', () => {
    let count = 0;
    const next = inBlocks((values) => {
      for (let i = 0; i < values.length; i++) values[i] = count++;
    });
    expect(Array.from({ length: 2000 }, next)).toEqual(Array.from({ length: 2000 }, (_, i) => i));
  });

  it('draws nothing before it is asked, little at first and never far ahead', () => {
    const sizes: number[] = [];
    const next = inBlocks((values) => sizes.push(values.length));
    expect(sizes).toEqual([]);
    for (let asked = 1; asked <= 2000; asked++) {
      next();
      const drawn = sizes.reduce((sum, size) => sum + size, 0);
      expect(drawn).toBeGreaterThanOrEqual(asked);
      expect(drawn - asked).toBeLessThan(Math.min(256, 16 + 4 * asked));
    }
  });
});

const z = (stream: Stream) => normalQuantile(stream() + 2 ** -33);

/** Marsaglia and Tsang's method (2000) as their text has it, without the squeeze that spares logarithms. */
function plainGamma(shape: number, stream: Stream): number {
  const d = shape - 1 / 3;
  for (;;) {
    const x = z(stream);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - stream()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** What each law makes of the next numbers of its stream, one draw at a time. */
const plain: readonly (readonly [Law, (stream: Stream) => number])[] = [
  [{ distribution: 'constant', value: 42 }, () => 42],
  [{ distribution: 'uniform', low: 2, high: 8 }, (stream) => 2 + 6 * stream()],
  [{ distribution: 'normal', mean: 40, sd: 5 }, (stream) => 40 + 5 * z(stream)],
  [
    { distribution: 'lognormal', mean: 10, sd: 4 },
    (stream) => Math.exp(Math.log(10) - Math.log(1.16) / 2 + Math.sqrt(Math.log(1.16)) * z(stream)),
  ],
  [{ distribution: 'gamma', mean: 8, sd: 4 }, (stream) => 2 * plainGamma(4, stream)],
  [{ distribution: 'gamma', mean: 40, sd: 1 }, (stream) => plainGamma(1600, stream) / 40],
  [
    { distribution: 'gamma', mean: 2, sd: 4 },
    (stream) => 8 * plainGamma(1.25, stream) * Math.exp(4 * Math.log(1 - stream())),
  ],
  [{ distribution: 'weibull', mean: 3, shape: 1 }, (stream) => -3 * Math.log(1 - stream())],
  [
    { distribution: 'geometric', chance: 0.2, step: 3 },
    (stream) => {
      // The first number of steps within which success comes with a chance of at least the number drawn.
      const u = stream();
      let steps = 1;
      while (0.8 ** steps > 1 - u) steps++;
      return 3 * steps;
    },
  ],
  [{ distribution: 'exponential', mean: 7 }, (stream) => 7 * standardExponential(stream)],
  [{ distribution: 'triangular', low: 0, mode: 0, high: 3 }, (stream) => 3 - 3 * Math.sqrt(1 - stream())],
  [{ distribution: 'empirical', values: [1, 4, 9] }, (stream) => [1, 4, 9][Math.floor(3 * stream())]!],
];

describe('draws ahead are the draws one by one', () => {
  it.each(plain)('of %o', (law, one) => {
    const draw = samplerOf(law, new Streams(3).of('x'));
    const stream = new Streams(3).of('x');
    for (let k = 0; k < 5000; k++) {
      // The formulas are written otherwise than in the program, so they round otherwise.
      const expected = one(stream);
      expect(Math.abs(draw() - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
    }
  });

  it('of the standard normal law', () => {
    const draw = standardNormal(new Streams(3).of('x'));
    const stream = new Streams(3).of('x');
    for (let k = 0; k < 1000; k++) expect(draw()).toBe(z(stream));
  });
});
