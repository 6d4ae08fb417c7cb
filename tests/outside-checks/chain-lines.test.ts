import { describe, expect, it } from 'vitest';
import { deterministicPair, exponentialPair, seriesRate } from './cases/chain-lines.ts';

/** Numbers are known to six digits. */
const near = (value: number, known: number) => expect(Math.abs(value / known - 1)).toBeLessThan(1e-5);

describe('lines solved as Markov chains', () => {
  // L01: G. C. Hunt (1956), Operations Research 4, 674-683: (B + 2)/(B + 3).
  it.each([0, 1, 2, 3, 5])('two equal exponential stations with %d places', (places) => {
    near(seriesRate([1, 1], 1, places), (places + 2) / (places + 3));
  });

  // L05: the same source: m1 m2 (m1 + m2)/(m1^2 + m1 m2 + m2^2).
  it('two unequal exponential stations, in either order', () => {
    near(seriesRate([1, 1 / 1.5], 1, 0), (1.5 * 2.5) / (1 + 1.5 + 1.5 ** 2));
    near(seriesRate([1 / 1.5, 1], 1, 0), (1.5 * 2.5) / (1 + 1.5 + 1.5 ** 2));
  });

  // L06: E. J. Muth (1973), International Journal of Production Research 11, 155-169: 1/E[max(S1, S2)].
  it.each([
    [2, 8 / 11],
    [3, 16 / 21],
  ])('two Erlang-%d stations without places', (phases, exact) => {
    near(seriesRate([1, 1], phases, 0), exact);
  });

  // L02 to L04, L07: 22/39 by Hunt; F. S. Hillier and R. W. Boling (1967), Operations Research 15, 286-303. L08: the same
  // (1966), Journal of Industrial Engineering 17, 651-658. Citations from memory; the numbers are those of another
  // program that solved the same chains.
  it.each([
    ['three equal stations', [1, 1, 1], 1, 0, 22 / 39],
    ['three equal stations', [1, 1, 1], 1, 1, 0.670466],
    ['three equal stations', [1, 1, 1], 1, 2, 0.734017],
    ['three equal stations', [1, 1, 1], 1, 3, 0.776712],
    ['three equal stations', [1, 1, 1], 1, 4, 0.807486],
    ['four equal stations', [1, 1, 1, 1], 1, 0, 0.514775],
    ['four equal stations', [1, 1, 1, 1], 1, 1, 0.631153],
    ['four equal stations', [1, 1, 1, 1], 1, 2, 0.700713],
    ['five equal stations', [1, 1, 1, 1, 1], 1, 0, 0.485798],
    ['six equal stations', [1, 1, 1, 1, 1, 1], 1, 0, 0.466713],
    ['three Erlang-2 stations', [1, 1, 1], 2, 0, 0.640409],
    ['three Erlang-2 stations', [1, 1, 1], 2, 1, 0.761307],
    ['three Erlang-2 stations', [1, 1, 1], 2, 2, 0.821886],
    ['a faster middle station', [1.05, 0.9, 1.05], 1, 0, 0.566643],
    ['a still faster middle station', [1.1, 0.8, 1.1], 1, 0, 0.567092],
  ])('%s', (_line, means, phases, places, known) => {
    near(seriesRate(means, phases, places), known);
  });

  // L10, L11: the model of S. B. Gershwin and I. C. Schick (1983), Operations Research 31, 354-380; L12: that of
  // S. B. Gershwin and O. Berman (1981), AIIE Transactions 13, 2-11. Numbers as above.
  it.each([
    [4, 0.840936, 2],
    [10, 0.856175, 5],
    [20, 0.870541, 10],
  ])('two equal deterministic machines with N = %d', (N, rate, level) => {
    const solved = deterministicPair({ p: [0.01, 0.01], r: [0.1, 0.1], N });
    near(solved.rate, rate);
    near(solved.level, level);
  });

  it('two unequal deterministic machines', () => {
    const { rate, level } = deterministicPair({ p: [0.02, 0.01], r: [0.1, 0.15], N: 10 });
    near(rate, 0.814341);
    near(level, 3.05244);
  });

  it('two exponential machines that fail', () => {
    const { rate, level } = exponentialPair({ p: [0.02, 0.03], r: [0.2, 0.25], N: 8 }, [1, 1.2]);
    near(rate, 0.828089);
    near(level, 3.07909);
  });
});
