import { describe, expect, it } from 'vitest';
import { factorsOf } from '../../src/cli/over.ts';
import { UsageError } from '../../src/cli/usage-error.ts';

const values = (text: string) => factorsOf([`a/b=${text}`])[0]!.levels.map(({ is }) => is);

describe('--over', () => {
  it.each([
    ['8,16, 24', [8, 16, 24]],
    ['30 min,2 %', ['30 min', '2 %']],
    ['unlimited,4', ['unlimited', 4]],
    ['{ distribution: exponential, mean: 9 s }, 9 s', [{ distribution: 'exponential', mean: '9 s' }, '9 s']],
    ['[1, 2],[3, 4]', [[1, 2], [3, 4]]], // biome-ignore format: one line reads better
    ['"a, b",c', ['a, b', 'c']],
    ['4 to 24 by 4', [4, 8, 12, 16, 20, 24]],
    ['4 to 23 by 4', [4, 8, 12, 16, 20]],
    ['0.1 to 0.4 by 0.1', [0.1, 0.2, 0.3, 0.4]],
    ['30 s to 50 s by 10 s', ['30 s', '40 s', '50 s']],
    ['30 to 50 s by 10', ['30 s', '40 s', '50 s']],
    ['4 to 24', [4, 24]],
  ])('%s', (text, expected) => {
    expect(values(text)).toEqual(expected);
  });

  it('takes a range for whole numbers where its ends are, and no unit stands there', () => {
    const range = (text: string) => factorsOf([`a/b=${text}`])[0]!.range;
    expect(range('4 to 24')).toEqual({ from: 4, to: 24, unit: '', whole: true });
    expect(range('4.0 to 24')).toMatchObject({ whole: false });
    expect(range('4 s to 24 s')).toEqual({ from: 4, to: 24, unit: 's', whole: false });
    expect(range('4,24')).toBeNull();
  });

  it('names a place without its section, unless two would be called the same', () => {
    const names = (...places: string[]) => factorsOf(places.map((place) => `${place}=1,2`)).map(({ name }) => name); // biome-ignore format: one line reads better
    expect(names('stations/press/buffer', 'run/length')).toEqual(['press/buffer', 'run/length']);
    expect(names('stations/a/x', 'parts/a/x')).toEqual(['stations/a/x', 'parts/a/x']);
  });

  it.each([
    [[], 'nothing is varied; name a place and its values'],
    [['a/b'], 'no place with values behind "="'],
    [['=1,2'], 'no place with values behind "="'],
    [['a/b='], 'has no values behind "="'],
    [['a/b=1,,2'], 'leaves a value out'],
    [['a/b=1,'], 'leaves a value out'],
    [['a/b=3'], 'has one value, 3, so nothing varies'],
    [['a/b=1,2,1'], 'has the value 1 twice'],
    [['a/b=1,{2'], '"{2" is no value'],
    [['a/b=24 to 4'], 'does not rise'],
    [['a/b=4 to 4'], 'does not rise'],
    [['a/b=4 to 24 by 0'], 'gets nowhere'],
    [['a/b=0 to 1 by 0.00001'], '100001 values'],
    [['a/b=4 s to 24 min'], 'given in s and min'],
    [['a/b=1,2', 'a/b=3,4'], 'is given twice'],
    [['a/b/c=1,2', 'a/b=3,4'], '"a/b/c" lies within "a/b"'],
    [['run/seeds=1,2'], 'said by --seeds'],
  ])('refuses %j', (texts, words) => {
    expect(() => factorsOf(texts)).toThrow(UsageError);
    expect(() => factorsOf(texts)).toThrow(words);
  });
});
