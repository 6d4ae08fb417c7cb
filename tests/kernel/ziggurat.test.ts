import { chiSquaredDistributionTable } from 'simple-statistics';
import { expect, it } from 'vitest';
import { standardExponential } from '../../src/kernel/distributions/ziggurat.ts';
import { Streams } from '../../src/kernel/streams.ts';

const DRAWS = 1_000_000;

/** How many draws of a million lie between neighbouring ones of `edges`, the last without end. */
function countsBetween(edges: readonly number[]): number[] {
  const stream = new Streams(11).of('ziggurat');
  const counts = edges.map(() => 0);
  for (let k = 0; k < DRAWS; k++) {
    const x = standardExponential(stream);
    let i = edges.length - 1;
    while (x < edges[i]!) i--;
    counts[i]!++;
  }
  return counts;
}

// The law itself is the outside check: 1 - exp(-x). 100 cells of equal chance, so every layer is met from both ends.
it('draws the exponential law, by a chi-square test over cells of equal chance', () => {
  const cells = 100;
  const edges = Array.from({ length: cells }, (_, i) => -Math.log(1 - i / cells));
  const expected = DRAWS / cells;
  const square = countsBetween(edges).reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  // 99 degrees of freedom: the table has 100, a hair wider. A right sampler exceeds it once in 200 checks; the seed is fixed.
  expect(square).toBeLessThan(chiSquaredDistributionTable[100]![0.005]!);
  expect(square).toBeGreaterThan(chiSquaredDistributionTable[100]![0.995]!);
});

it('draws its tail, which lies beyond all layers, as often as the law has it', () => {
  const begins = 7.69711747013105;
  const [, inTail, beyond] = countsBetween([0, begins, begins + 1]);
  for (const [count, chance] of [
    [inTail! + beyond!, Math.exp(-begins)],
    [beyond!, Math.exp(-begins - 1)],
  ] as const) {
    expect(Math.abs(count - DRAWS * chance)).toBeLessThan(3.5 * Math.sqrt(DRAWS * chance));
  }
});
