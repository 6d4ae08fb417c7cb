import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectMean, perSecond, runsOf, scenarioOf } from './by-simulation.ts';

const exponential = (mean: number) => `{ distribution: exponential, mean: ${mean} s }`;

/** Stations in series, one cycle each, with the same buffer before all but the first, which never starves. */
function series(cycles: readonly string[], buffer: number, length = '10 h', warmUp = '15 min') {
  const stations = cycles.map((cycle, i) => {
    const feed = i === 0 ? 'takes: blank' : `buffer: ${buffer}`;
    const to = i + 1 < cycles.length ? `s${i + 1}` : 'good';
    return `  s${i}: { does: work, ${feed}, cycle: ${cycle}, to: ${to} }`;
  });
  return scenarioOf(
    warmUp,
    length,
    `stock:\n  blank: { unlimited: true }\nstations:\n${stations.join('\n')}`,
  );
}

/** Good parts per mean cycle of one second. */
const rates = (scenario: Scenario) => runsOf(scenario).map(perSecond);

describe('lines of exponential stations by simulation', { timeout: 60_000 }, () => {
  // L01: G. C. Hunt (1956), Operations Research 4, 674-683: (B + 2)/(B + 3) of a station's rate.
  it.each([
    [0, 2 / 3],
    [1, 3 / 4],
    [2, 4 / 5],
    [3, 5 / 6],
    [5, 7 / 8],
  ])('two equal stations with %d places between pass on (B + 2)/(B + 3)', (places, exact) => {
    expectMean(rates(series([exponential(1), exponential(1)], places)), exact);
  });

  // L02: three stations. B = 0 is 22/39 (Hunt 1956); the others from F. S. Hillier and R. W. Boling (1967), Operations
  // Research 15, 286-303, solved again as Markov chains (citation from memory).
  it.each([
    [0, 22 / 39],
    [1, 0.670466],
    [2, 0.734017],
    [3, 0.776712],
  ])('three equal stations with %d places in each gap', (places, exact) => {
    expectMean(rates(series([exponential(1), exponential(1), exponential(1)], places)), exact);
  });

  // L03, L04: four and five stations, same source.
  it.each([
    [4, 0, 0.514775],
    [4, 1, 0.631153],
    [5, 0, 0.485798],
  ])('%d equal stations with %d places in each gap', (stations, places, exact) => {
    expectMean(rates(series(Array(stations).fill(exponential(1)), places)), exact);
  });

  // L05: unequal rates m1 = 1, m2 = 1.5, no places: m1 m2 (m1 + m2)/(m1^2 + m1 m2 + m2^2) (Hunt 1956).
  it('two unequal stations without places, in either order', () => {
    const exact = (1.5 * 2.5) / (1 + 1.5 + 2.25);
    expectMean(rates(series([exponential(1), exponential(1 / 1.5)], 0)), exact);
    expectMean(rates(series([exponential(1 / 1.5), exponential(1)], 0)), exact);
  });

  // L06: two stations without places pass on 1/E[max(S1, S2)] whatever the law. E. J. Muth (1973), International
  // Journal of Production Research 11, 155-169 (citation from memory; closed forms recomputed).
  it.each([
    ['Erlang-2', `{ distribution: gamma, mean: 1 s, cv: ${100 / Math.sqrt(2)} % }`, 8 / 11],
    ['Erlang-3', `{ distribution: gamma, mean: 1 s, cv: ${100 / Math.sqrt(3)} % }`, 16 / 21],
    ['uniform', '{ distribution: uniform, low: 0 s, high: 2 s }', 0.75],
  ])('two stations without places pass on one part per longer cycle: %s', (_law, cycle, exact) => {
    expectMean(rates(series([cycle, cycle], 0)), exact);
  });

  // L08: the bowl. F. S. Hillier and R. W. Boling (1966), Journal of Industrial Engineering 17, 651-658 (citation from
  // memory): a middle station that is faster at the same total work raises throughput from 0.564103 to 0.566643.
  // The runs share their seeds, and a part's times scale with the station's mean, so the small gain is the mean of
  // paired differences: far sharper than either rate, though 15 % of a gain of half a percent is all it has to be.
  it('a faster middle station beats equal stations by the published half percent', () => {
    const bowl = rates(series([1.05, 0.9, 1.05].map(exponential), 0, '40 h'));
    const equal = rates(series([1, 1, 1].map(exponential), 0, '40 h'));
    expectMean(
      bowl.map((rate, i) => rate - equal[i]!),
      0.566643 - 22 / 39,
      0.1,
    );
  });
});

describe("Little's law in what a run reports", { timeout: 60_000 }, () => {
  // L20: J. D. C. Little (1961), Operations Research 9, 383-387. Over a window the identity holds but for the ends: the
  // integral of the number in the line lacks what the first leavers had spent before the window, and contains what the
  // last parts have spent in it. Each end is the sum of the ages of the parts then in the line: at most one on each
  // of 4 stations and 3 x 4 in buffers, and no part of a first-in first-out line this short has stayed ten mean lead
  // times. That bounds the difference of work in progress from throughput x lead time.
  it('gives work in progress = throughput x lead time, up to the parts that straddle the window', () => {
    const window = 40 * 3600;
    const most = 16;
    const outcomes = runsOf(series([1, 0.9, 1, 0.8].map(exponential), 4, '40 h'), 10);
    for (const outcome of outcomes) {
      const stay = outcome.measures.lead_time_s!;
      const number = outcome.measures.work_in_progress_parts!;
      const bound = (most * 10 * stay) / window;
      expect(bound / number, 'the bound must be able to fail').toBeLessThan(0.002);
      expect(Math.abs(number - perSecond(outcome) * stay)).toBeLessThan(bound);
    }
  });
});
