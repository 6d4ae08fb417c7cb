import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../src/kernel/normal-quantile.ts';
import { Streams } from '../../../src/kernel/streams.ts';
import { listed, madeUp, ranged } from './sample.ts';

const luck = new Streams(3).of('made-up luck');
const normal = () => normalQuantile(luck() || 0.5);

describe('all combinations', () => {
  // A pilot plant: G. E. P. Box, W. G. Hunter and J. S. Hunter, Statistics for Experimenters, chapter 10 (from memory).
  it('of two values give the effects of a published example', () => {
    const yields = [60, 72, 54, 68, 52, 83, 45, 80];
    const factors = [listed('temperature', [0, 1]), listed('concentration', [0, 1]), listed('catalyst', [0, 1])]; // biome-ignore format: one line reads better
    const { varied } = madeUp('all', factors, {}, ([t, c, k], seed) => yields[t! + 2 * c! + 4 * k!]! + seed);
    if (varied.effects.kind !== 'two values') throw new Error(varied.effects.kind);
    const found = varied.effects.rows.map(({ factors: of, effect }) => [
      of.join(),
      effect.value,
      effect.lower,
    ]);
    expect(found).toEqual([
      ['0', 23, 23],
      ['1', -5, -5],
      ['2', 1.5, 1.5],
      ['0,1', 1.5, 1.5],
      ['0,2', 10, 10],
      ['1,2', 0, 0],
    ]);
    expect(varied.best).toBe(5);
    // By hand: the mean of the four yields at the low temperature, and the mean seed, 2.
    expect(varied.means[0]!.estimate.value).toBeCloseTo((60 + 54 + 52 + 45) / 4 + 2, 10);
  });

  it('of more values give effects against the mean over all, and take the lowest for best where lower is', () => {
    const factors = [listed('a', [1, 2, 3]), listed('b', [0, 1])];
    const gives = ([a, b]: readonly number[], seed: number) => 10 * a! + 4 * b! + seed;
    const { varied } = madeUp('all', factors, {}, gives, 'lead_time_s');
    if (varied.effects.kind !== 'levels') throw new Error(varied.effects.kind);
    expect(varied.effects.rows.slice(0, 5).map(({ effect }) => effect.value)).toEqual([-10, 0, 10, -2, 2]);
    expect(varied.effects.rows.slice(5).every(({ effect }) => effect.value === 0)).toBe(true);
    expect(varied.effects.rows[0]!.effect.method).toBe('t, Bonferroni for 11');
    expect(varied.best).toBe(0);
  });

  it('give no effects where a run gives no value, and no interval by one seed', () => {
    const factors = [listed('a', [1, 2])];
    const { varied } = madeUp('all', factors, {}, ([a], seed) => (a === 1 && seed === 2 ? null : a!));
    expect(varied.effects).toEqual({ kind: 'none' });
    expect(varied.estimates[0]).toMatchObject({ value: 1, runs: 2 });
    const alone = madeUp('all', factors, { seeds: 1 }, ([a]) => a!).varied;
    if (alone.effects.kind !== 'two values') throw new Error(alone.effects.kind);
    expect(alone.effects.rows[0]!.effect).toMatchObject({ value: 1, lower: null });
  });

  it('give means that there can be', () => {
    const { varied } = madeUp('all', [listed('a', [1, 2])], { seeds: 2 }, (_, seed) => seed);
    // By 1 and 2 the t interval goes from 1.5 - 6.4 to 1.5 + 6.4, and there is no throughput below 0.
    for (const found of [varied.estimates[0]!, varied.means[0]!.estimate])
      expect(found).toMatchObject({ value: 1.5, lower: 0, upper: expect.closeTo(1.5 + 12.706 / 2, 3) });
  });

  it('cover true effects, all together, at least as often as is said', () => {
    const factors = [listed('a', [0, 1, 2]), listed('b', [0, 1])];
    const trials = 400;
    let held = 0;
    for (let trial = 0; trial < trials; trial++) {
      // Luck that all settings of a seed share, and some of each by itself.
      const shared = Array.from({ length: 5 }, () => 10 * normal());
      const { varied } = madeUp('all', factors, { seeds: 5 }, ([a, b], seed) => 3 * a! - 2 * b! + shared[seed - 1]! + normal()); // biome-ignore format: one line reads better
      if (varied.effects.kind !== 'levels') throw new Error(varied.effects.kind);
      const truth = [-3, 0, 3, 1, -1, ...[0, 0, 0, 0, 0, 0]];
      if (varied.effects.rows.every(({ effect }, i) => effect.lower! <= truth[i]! && truth[i]! <= effect.upper!)) held++; // biome-ignore format: one line reads better
    }
    expect(held / trials).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / trials));
  });
});

it('a fraction tells main effects, and which it cannot tell apart', () => {
  const factors = ['a', 'b', 'c', 'd'].map((name) => listed(name, [-1, 1]));
  const gives = ([a, b, c, d]: readonly number[]) => 5 * a! - d! + 2 * a! * b! + 0.5 * c! * d!;
  const { varied } = madeUp('fraction', factors, { count: 8 }, gives);
  if (varied.effects.kind !== 'two values') throw new Error(varied.effects.kind);
  expect(varied.design.fraction).toMatchObject({ resolution: 4, words: ['ABCD'] });
  // From low to high each goes two units; AB holds CD as well.
  expect(varied.effects.rows.map(({ effect }) => effect.value)).toEqual([10, 0, 0, -2, 5, 0, 0]);
  expect(varied.effects.rows[4]).toMatchObject({
    factors: [0, 1],
    mixedWith: [{ factors: [2, 3], sign: 1 }],
  });
});

describe('a Latin hypercube', () => {
  it('takes each part of each range once, whole numbers as whole, and finds a plane', () => {
    const factors = [ranged('a', 0, 10), ranged('n', 1, 20, true), listed('l', [1, 3])];
    const { varied } = madeUp('latin', factors, { count: 20 }, ([a, n, l]) => 2 * a! - n! + 5 * l!);
    if (varied.effects.kind !== 'linear') throw new Error(varied.effects.kind);
    for (const [i, effect] of [20, -19, 10].entries())
      expect(varied.effects.rows[i]!.effect.value).toBeCloseTo(effect, 8);
    expect(varied.effects.explained).toBeCloseTo(1, 10);
    const column = (i: number) => varied.design.points.map((point) => point[i]!.is as number);
    expect([...column(1)].sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
    expect(column(0).map((a) => Math.floor(2 * a)).sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i)); // biome-ignore format: one line reads better
    expect(column(2).filter((l) => l === 1)).toHaveLength(10);
  });
});

describe('screening', () => {
  it('tells what matters from what does not, and gives each path seeds of its own', () => {
    const factors = [ranged('slope', 0, 10), ranged('nothing', 0, 1), ranged('whole', 1, 4, true)];
    const { varied, runs } = madeUp('screen', factors, { count: 8, seeds: 3 }, ([a, , n]) => 4 * a! + n! ** 2 + normal()); // biome-ignore format: one line reads better
    if (varied.effects.kind !== 'screened') throw new Error(varied.effects.kind);
    const [slope, nothing, whole] = varied.effects.rows;
    expect([slope, nothing, whole].map((row) => row!.matters)).toEqual([true, false, true]);
    expect(slope!.mean.lower!).toBeLessThan(40);
    expect(slope!.mean.upper!).toBeGreaterThan(40);
    expect(slope!.spread!).toBeLessThan(whole!.spread!);
    for (const { point, outcome } of runs)
      expect(Math.ceil(outcome.seed / 3)).toBe(Math.floor(point / 4) + 1);
  });

  it('calls nothing something in hardly any experiment', () => {
    const factors = [ranged('a', 0, 1), ranged('b', 0, 1)];
    const trials = 300;
    let wrong = 0;
    for (let trial = 0; trial < trials; trial++) {
      const { varied } = madeUp('screen', factors, { count: 4, seeds: 3 }, normal);
      if (varied.effects.kind !== 'screened') throw new Error(varied.effects.kind);
      if (varied.effects.rows.some(({ matters }) => matters)) wrong++;
    }
    expect(wrong / trials).toBeLessThan(0.05 + 4 * Math.sqrt((0.05 * 0.95) / trials));
  });

  it('by one seed does not tell luck', () => {
    const { varied } = madeUp('screen', [ranged('a', 0, 1)], { count: 2, seeds: 1 }, ([a]) => a!);
    if (varied.effects.kind !== 'screened') throw new Error(varied.effects.kind);
    expect(varied.effects.rows[0]).toMatchObject({ matters: null });
  });
});
