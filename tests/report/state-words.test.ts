import { describe, expect, it } from 'vitest';
import { STATES } from '../../src/line/state.ts';
import { occurring, STATE_LOOKS } from '../../src/report/state-words.ts';
import { contrast, difference, KINDS, lab, linear, seen } from './colour-sight.ts';
import { shares } from './fake.ts';

const looks = STATES.map((state) => STATE_LOOKS[state]);
const pairs = looks.flatMap((a, i) => looks.slice(i + 1).map((b) => [a, b] as const));

describe('the look of a state', () => {
  it('has a word of plain letters and a letter of its own', () => {
    for (const { word, letter } of looks) {
      expect(word).toMatch(/^[a-z]+([ -][a-z]+)?$/);
      expect(letter).toMatch(/^[a-z]$/);
    }
    expect(new Set(looks.map(({ word }) => word)).size).toBe(STATES.length);
    expect(new Set(looks.map(({ letter }) => letter)).size).toBe(STATES.length);
  });

  it('has an ink that is legible on its colour: WCAG 2.2, success criterion 1.4.3, asks for 4.5', () => {
    for (const { word, colour, ink } of looks)
      expect(contrast(colour, ink), word).toBeGreaterThanOrEqual(4.5);
  });

  it('tells ink and colour apart as published: black on white is 21, #767676 on white is 4.54', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  // Eight times what is just noticeable.
  it.each(KINDS)('has a colour unlike all the others: %s', (kind) => {
    for (const [a, b] of pairs) {
      expect(
        difference(seen(a.colour, kind), seen(b.colour, kind)),
        `${a.word} and ${b.word}`,
      ).toBeGreaterThan(8 * 2.3);
    }
  });

  it('has a lightness of its own, for grey print', () => {
    for (const [a, b] of pairs) {
      const apart = Math.abs(lab(linear(a.colour))[0] - lab(linear(b.colour))[0]);
      expect(apart, `${a.word} and ${b.word}`).toBeGreaterThan(2 * 2.3);
    }
  });
});

describe('occurring', () => {
  it('gives the states that some station was in, in their order', () => {
    const one = { a: shares({ held: 0.5, working: 0.5 }), b: shares({ working: 1 }) };
    const other = { a: shares({ off_shift: 1e-9, working: 1 }) };
    expect(occurring([one, other])).toEqual(['working', 'off_shift', 'held']);
    expect(occurring([one])).toEqual(['working', 'held']);
  });
});
