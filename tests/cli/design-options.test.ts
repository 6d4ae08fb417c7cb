import { describe, expect, it } from 'vitest';
import { designOptions } from '../../src/cli/design-options.ts';
import { factorsOf } from '../../src/cli/over.ts';
import { UsageError } from '../../src/cli/usage-error.ts';

const two = (n: number) => factorsOf(Array.from({ length: n }, (_, i) => `a/b${i}=1,2`));
const ranges = (n: number) => factorsOf(Array.from({ length: n }, (_, i) => `a/b${i}=1 to 9`));
const POLICY = { at: null, name: 'policy', levels: [{ words: 'x', is: 'x' }, { words: 'y', is: 'y' }], range: null }; // biome-ignore format: one line reads better

describe('the options of a design', () => {
  it.each([
    [two(3), {}, 'all', 8],
    [[...two(1), POLICY], {}, 'all', 4],
    // The smallest that keep main effects from interactions of two: resolution 4 or more.
    [two(4), { design: 'fraction' }, 'fraction', 8],
    [two(7), { design: 'fraction' }, 'fraction', 16],
    [two(7), { design: 'fraction', points: 8 }, 'fraction', 8],
    [two(3), { design: 'fraction' }, 'fraction', 4],
    [ranges(2), { design: 'latin' }, 'latin', 20],
    [ranges(2), { design: 'latin', points: 4 }, 'latin', 4],
    [ranges(2), { design: 'screen' }, 'screen', 10],
    [ranges(20), { design: 'screen', paths: 4 }, 'screen', 4],
  ])('of %j with %j', (factors, given, kind, count) => {
    expect(designOptions(factors, given, 5)).toEqual({ kind, count });
  });

  it.each([
    [two(3), { design: 'factorial' }, '"factorial" is no design'],
    [two(3), { design: 'screeen' }, 'did you mean "screen"?'],
    [two(3), { points: 4 }, '--points goes with --design fraction or latin, not with all'],
    [two(3), { design: 'latin', paths: 4 }, '--paths goes with --design screen'],
    [ranges(2), {}, 'is a range, of which all combinations take some values'],
    [factorsOf(['a/b=1,2,3', 'a/c=1,2']), { design: 'fraction' }, 'a/b has 3'],
    [two(2), { design: 'fraction' }, 'of 3 to 8 things varied, and there are 2'],
    [two(9), { design: 'fraction' }, 'of 3 to 8 things varied, and there are 9'],
    [two(4), { design: 'fraction', points: 6 }, '--points 6 is no fraction of 4 things varied; there are those of 8 points'], // biome-ignore format: one line reads better
    [ranges(3), { design: 'latin', points: 4 }, 'too few to tell 3 effects; take 5 or more'],
    [[...ranges(3), POLICY], { design: 'latin' }, 'goes by numbers, and policy has none'],
    [factorsOf(['a/b=1,2,3']), { design: 'screen' }, 'goes from end to end of a range'],
    [ranges(3), { design: 'screen', paths: 5000 }, 'these are 20000 points; at most 10000'],
  ])('refuses %j with %j', (factors, given, words) => {
    expect(() => designOptions(factors, given, 5)).toThrow(UsageError);
    expect(() => designOptions(factors, given, 5)).toThrow(words);
  });

  it('refuses ten million combinations before any is made, and says what to do', () => {
    const factors = factorsOf(Array.from({ length: 7 }, (_, i) => `a/b${i}=1 to 10 by 1`));
    const refused = () => designOptions(factors, {}, 30);
    expect(refused).toThrow('are 10000000 combinations and 300000000 runs; at most 10000 combinations');
    expect(refused).toThrow('by --design fraction, latin or screen');
    expect(() => designOptions(two(10), {}, 1000)).toThrow('1024000 runs; at most 100000');
  });
});
