import { describe, expect, it } from 'vitest';
import type { Law } from '../../src/kernel/distributions/index.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused } from './sample.ts';

/** SOUND with the cycle of its first station written as `law`. */
const withCycle = (law: string) => changed('cycle: 12 s', `cycle: ${law}`);
const read = (law: string): Law => parseScenario(withCycle(law), 'cell.yaml').stations[0]!.cycle;

describe('a time in a scenario', () => {
  it.each<[string, Law]>([
    ['2 min', { distribution: 'constant', value: 120 }],
    ['{ distribution: constant, value: 2 min }', { distribution: 'constant', value: 120 }],
    ['{ distribution: uniform, low: 1 min, high: 90 s }', { distribution: 'uniform', low: 60, high: 90 }],
    [
      '{ distribution: triangular, low: 1 s, mode: 2 s, high: 4 s }',
      { distribution: 'triangular', low: 1, mode: 2, high: 4 },
    ],
    ['{ distribution: normal, mean: 20 s, sd: 2 s }', { distribution: 'normal', mean: 20, sd: 2 }],
    ['{ distribution: normal, mean: 20 s, cv: 10 % }', { distribution: 'normal', mean: 20, sd: 2 }],
    ['{ distribution: lognormal, mean: 1 min, cv: 50 % }', { distribution: 'lognormal', mean: 60, sd: 30 }],
    ['{ distribution: lognormal, mean: 1 min, sd: 30 s }', { distribution: 'lognormal', mean: 60, sd: 30 }],
    ['{ distribution: gamma, mean: 1 min, cv: 150 % }', { distribution: 'gamma', mean: 60, sd: 90 }],
    ['{ distribution: gamma, mean: 1 min, sd: 0 s }', { distribution: 'constant', value: 60 }],
    ['{ distribution: lognormal, mean: 1 min, cv: 0 % }', { distribution: 'constant', value: 60 }],
    [
      '{ distribution: weibull, mean: 4 h, shape: 1.5 }',
      { distribution: 'weibull', mean: 14400, shape: 1.5 },
    ],
    ['{ distribution: exponential, mean: 4 h }', { distribution: 'exponential', mean: 14400 }],
    [
      '{ distribution: geometric, chance: 1 %, step: 1 min }',
      { distribution: 'geometric', chance: 0.01, step: 60 },
    ],
    [
      '{ distribution: geometric, chance: 100 %, step: 1 s }',
      { distribution: 'geometric', chance: 1, step: 1 },
    ],
    ['{ distribution: empirical, values: [1 s, 2 min] }', { distribution: 'empirical', values: [1, 120] }],
  ])('written %s is read in seconds', (written, law) => {
    expect(read(written)).toEqual(law);
  });

  it('given as a rate has the mean between two of them', () => {
    const law = read('{ distribution: exponential, rate: 12 /h }') as Extract<
      Law,
      { distribution: 'exponential' }
    >;
    expect(law.mean).toBeCloseTo(300, 9);
  });

  it.each([
    ['¤12', '12 has no unit; expected a time with its unit (s, ms, min, h, d), such as 42 s'],
    ['¤twelve', '"twelve": expected a time with its unit'],
    ['¤12 mm', '"12 mm": expected a time with its unit'],
    ['¤12 /h', '"12 /h": expected a time with its unit'],
    ['¤-12 s', '-12 s is not allowed: a time here is not negative'],
    ['¤1e999 s', '"1e999 s": expected a time'],
    ['¤null', 'expected a time'],
    ['¤[12 s]', 'expected a time'],
    [
      '{ distribution: ¤gama, mean: 1 s, cv: 5 % }',
      'distribution: "gama" is not known; did you mean "gamma"?',
    ],
    ['{ distribution: gamma, ¤men: 1 s, mean: 1 s, cv: 5 % }', 'unknown key "men"; did you mean "mean"?'],
    ['¤{ mean: 1 s, cv: 5 % }', 'expected a mapping with "distribution"'],
    ['¤{ distribution: gamma, cv: 5 % }', '"mean" is missing: expected a time with its unit'],
    ['{ distribution: gamma, mean: ¤0 s, cv: 5 % }', '0 s is not allowed: a time here is above zero'],
    ['¤{ distribution: gamma, mean: 1 s }', 'exactly one of "sd" (such as 4 s) and "cv" (such as 20 %)'],
    ['¤{ distribution: gamma, mean: 1 s, sd: 1 s, cv: 5 % }', 'exactly one of "sd"'],
    ['{ distribution: gamma, mean: 1 s, cv: ¤0.2 }', '0.2 has no unit; expected a share with its unit (%)'],
    ['{ distribution: gamma, mean: 1 s, cv: ¤-5 % }', '-5 % is not allowed: a share here is not negative'],
    ['¤{ distribution: normal, mean: 10 s, cv: 50 % }', 'use lognormal or gamma'],
    ['¤{ distribution: uniform, low: 2 s, high: 1 s }', '"low" lies above "high"'],
    ['¤{ distribution: triangular, low: 2 s, mode: 1 s, high: 3 s }', 'expected low <= mode <= high'],
    ['{ distribution: weibull, mean: 1 s, shape: ¤0 }', 'expected a number, 0.1 or more'],
    ['{ distribution: weibull, mean: 1 s, shape: ¤round }', 'expected a number, such as 1.5'],
    ['¤{ distribution: exponential }', 'expected exactly one of "mean" (42 s) and "rate" (12 /h)'],
    ['¤{ distribution: exponential, mean: 1 s, rate: 1 /s }', 'exactly one of "mean"'],
    ['{ distribution: exponential, rate: ¤12 s }', '"12 s": expected a rate with its unit'],
    [
      '{ distribution: geometric, chance: ¤0 %, step: 1 s }',
      '0 % is not allowed: a share here is above 0 % and up to 100 %',
    ],
    ['{ distribution: geometric, chance: ¤101 %, step: 1 s }', '101 % is not allowed'],
    ['{ distribution: geometric, chance: ¤1, step: 1 s }', '1 has no unit'],
    ['{ distribution: geometric, chance: 1 %, step: ¤0 s }', '0 s is not allowed: a time here is above zero'],
    ['¤{ distribution: geometric, chance: 1 % }', '"step" is missing'],
    ['{ distribution: empirical, values: ¤[] }', 'expected a list of times'],
    ['{ distribution: empirical, values: [1 s, ¤2] }', '2 has no unit; expected a time'],
  ])('written %s is refused there', (written, message) => {
    expectRefused(withCycle(written), message);
  });
});
