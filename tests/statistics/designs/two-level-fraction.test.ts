import { describe, expect, it } from 'vitest';
import { twoLevelFraction, usualGenerators } from '../../../src/statistics/designs/two-level-fraction.ts';

// G. E. P. Box, J. S. Hunter and W. G. Hunter, Statistics for Experimenters, chapter 6; NIST/SEMATECH e-Handbook 5.3.3.4
// (defining relations and resolutions from memory).
describe('a fraction of all combinations at two levels', () => {
  it('without generators is all of them', () => {
    const { points, words, resolution } = twoLevelFraction(3);
    expect(points.map((row) => row.map((sign) => (sign > 0 ? '+' : '-')).join(''))).toEqual([
      '---',
      '+--',
      '-+-',
      '++-',
      '--+',
      '+-+',
      '-++',
      '+++',
    ]);
    expect(words).toEqual([]);
    expect(resolution).toBeNull();
  });

  it.each([
    [3, ['C=AB'], ['ABC'], 3],
    [3, ['C=-AB'], ['-ABC'], 3],
    [4, ['D=ABC'], ['ABCD'], 4],
    [5, ['D=AB', 'E=AC'], ['ABD', 'ACE', 'BCDE'], 3],
    [5, ['E = ABCD'], ['ABCDE'], 5],
    [6, ['E=ABC', 'F=BCD'], ['ABCE', 'BCDF', 'ADEF'], 4],
    [5, ['D=-AB', 'E=AC'], ['-ABD', 'ACE', '-BCDE'], 3],
  ])('of %d factors by %j has the words %j', (factors, generators, words, resolution) => {
    const found = twoLevelFraction(factors, generators);
    expect([...found.words].sort()).toEqual([...words].sort());
    expect(found.resolution).toBe(resolution);
  });

  it.each([
    [7, ['D=AB', 'E=AC', 'F=BC', 'G=ABC'], 3],
    [8, ['E=BCD', 'F=ACD', 'G=ABC', 'H=ABD'], 4],
    [8, ['G=ABCD', 'H=ABEF'], 5],
  ])(
    'of %d factors is balanced and free of correlation between its columns',
    (factors, generators, resolution) => {
      const found = twoLevelFraction(factors, generators);
      expect(found.resolution).toBe(resolution);
      expect(found.points).toHaveLength(2 ** (factors - generators.length));
      for (let i = 0; i < factors; i++)
        for (let j = 0; j <= i; j++) {
          const product = found.points.reduce<number>((sum, row) => sum + row[i]! * row[j]!, 0);
          expect(product).toBe(i === j ? found.points.length : 0);
        }
      // Each word is the same at all points.
      for (const word of found.words) {
        const letters = [...word.replace('-', '')].map((letter) => 'ABCDEFGH'.indexOf(letter));
        for (const row of found.points)
          expect(letters.reduce<number>((sign, i) => sign * row[i]!, 1)).toBe(word.startsWith('-') ? -1 : 1);
      }
    },
  );

  // NIST/SEMATECH e-Handbook 5.3.3.4.7: designs and their resolutions (from memory).
  it.each([
    [3, 3, 4],
    [4, 4, 8],
    [5, 3, 8],
    [5, 5, 16],
    [6, 3, 8],
    [6, 4, 16],
    [6, 6, 32],
    [7, 3, 8],
    [7, 4, 16],
    [7, 7, 64],
    [8, 4, 16],
    [8, 5, 64],
    [4, 5, 16],
    [9, 3, 512],
  ])('for %d factors at resolution %d usually has %d points', (factors, resolution, points) => {
    const found = twoLevelFraction(factors, usualGenerators(factors, resolution));
    expect(found.points).toHaveLength(points);
    if (found.resolution !== null) expect(found.resolution).toBeGreaterThanOrEqual(resolution);
  });

  it.each([
    [4, ['D=ABX']],
    [4, ['A=BC']],
    [4, ['D=AA']],
    [4, ['D']],
    [4, ['E=ABC']],
    [5, ['E=AB', 'E=AC']],
    [2, ['A=B', 'B=A']],
    [0, []],
  ])('of %d factors by %j is refused', (factors, generators) => {
    expect(() => twoLevelFraction(factors, generators)).toThrow(RangeError);
  });
});
