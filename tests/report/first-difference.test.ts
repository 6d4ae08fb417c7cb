import { describe, expect, it } from 'vitest';
import { firstDifference } from '../../src/report/first-difference.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const between = (then: string, now: string) => firstDifference(bytes(then), bytes(now));

describe('firstDifference', () => {
  it('finds none in the same bytes', () => {
    expect(between('a\nb\n', 'a\nb\n')).toBeNull();
    expect(between('', '')).toBeNull();
  });

  it('names the line and shows both', () => {
    expect(between('a\nb 1\nc', 'a\nb 2\nc')).toEqual([
      'differs from line 2 on:',
      '  report: b 1',
      '  anew:   b 2',
    ]);
  });

  it.each([
    ['a\n', 'a\nb', ['differs from line 2 on:', '  report: (nothing)', '  anew:   b']],
    ['a\nb', 'a\n', ['differs from line 2 on:', '  report: b', '  anew:   (nothing)']],
    ['', 'a', ['differs from line 1 on:', '  report: (nothing)', '  anew:   a']],
  ])('finds that one ends before the other: %j, %j', (then, now, said) => {
    expect(between(then, now)).toEqual(said);
  });

  it('shows of a long line what stands around the place, in 80 columns and without control characters', () => {
    const said = between(
      `${'é'.repeat(500)}1\u001b${'x'.repeat(500)}`,
      `${'é'.repeat(500)}2${'x'.repeat(500)}`,
    )!;
    expect(said[1]).toMatch(/^ {2}report: é{9,10}1 x+…$/);
    for (const line of said) {
      expect([...line].length).toBeLessThanOrEqual(80);
      expect(line).not.toMatch(/\p{Cc}|\uFFFD/u);
    }
  });

  it('counts bytes where a file is no text', () => {
    expect(between('PAR1\0ab', 'PAR1\0ac1')).toEqual([
      'differs from byte 7 on; 7 bytes in the report, 8 anew',
    ]);
  });
});
