import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, refuses } from './sample.ts';

describe('the rolling window', () => {
  it.each([
    ['30 min', 1800],
    ['8 h', 28_800],
    ['28.8 s', 28.8],
  ])('of %s is read', (given, seconds) => {
    const text = changed('seeds: 4 }', `seeds: 4, rolling: ${given} }`);
    expect(parseScenario(text, 'cell.yaml').run.rolling).toBeCloseTo(seconds, 9);
  });

  const bounds = 'expected a time from a thousandth of the length up to all of it';
  refuses([
    ['seeds: 4 }', 'seeds: 4, rolling: ¤9 h }', bounds],
    ['seeds: 4 }', 'seeds: 4, rolling: ¤28 s }', bounds],
    ['seeds: 4 }', 'seeds: 4, rolling: ¤0 s }', 'time here is above zero'],
    ['seeds: 4 }', 'seeds: 4, rolling: ¤30 }', '30 has no unit'],
    ['seeds: 4 }', 'seeds: 4, ¤roling: 30 min }', 'did you mean "rolling"?'],
  ]);
});
