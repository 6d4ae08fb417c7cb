import { linearRegression } from 'simple-statistics';
import { expect, it } from 'vitest';
import { boundFactor, linearEffects } from '../../../src/statistics/designs/linear-effects.ts';

const POINTS = [
  [0.1, 0.9, 0.5],
  [0.3, 0.2, 0.8],
  [0.5, 0.6, 0.1],
  [0.7, 0.1, 0.3],
  [0.9, 0.7, 0.9],
  [0.2, 0.4, 0.7],
];

it('finds a plane exactly, whatever the seeds add to all points', () => {
  const values = POINTS.map(([a, b, c]) => [5, -2, 40].map((luck) => luck + 3 * a! - 7 * b! + 0 * c!));
  const { effects, explained } = linearEffects(POINTS, values, 0.95);
  for (const [factor, slope] of [3, -7, 0].entries()) {
    expect(effects[factor]!.value).toBeCloseTo(slope, 10);
    expect(effects[factor]!.upper! - effects[factor]!.lower!).toBeLessThan(1e-10);
  }
  expect(explained).toBeCloseTo(1, 12);
});

it('gives the straight line of a general library for one factor', () => {
  const points = POINTS.map(([a]) => [a!]);
  const values = [[3, 1], [4, 1], [4, 5], [9, 2], [6, 6], [5, 3]]; // biome-ignore format: one line reads better
  const { effects } = linearEffects(points, values, 0.95);
  const slopes = [0, 1].map((seed) => linearRegression(points.map(([a], i) => [a!, values[i]![seed]!])).m);
  expect(effects[0]!.value).toBeCloseTo((slopes[0]! + slopes[1]!) / 2, 12);
});

it('accounts for nothing where nothing varies, and refuses too few points', () => {
  const flat = POINTS.map(() => [2, 2]);
  expect(linearEffects(POINTS, flat, 0.95).explained).toBeNull();
  expect(() => linearEffects(POINTS.slice(2), flat.slice(2), 0.95)).toThrow('take 5 or more');
  expect(() => linearEffects(POINTS, flat.slice(1), 0.95)).toThrow(RangeError);
});

it('refuses points that do not tell factors apart', () => {
  const level = (x: number) => (x < 0.5 ? 0 : 1);
  const same = POINTS.map(([a, b]) => [level(a!), b!, level(a!)]);
  const sum = POINTS.map(([a, b]) => [a!, b!, 0.3 * a! - 2 * b!]);
  expect([POINTS, same, sum, POINTS.map(([a]) => [a!, 1])].map(boundFactor)).toEqual([-1, 2, 2, 1]);
  const values = POINTS.map(([a, b]) => [a!, b!]);
  expect(() => linearEffects(same, values, 0.95)).toThrow('do not tell factor 2 from those before it');
});
