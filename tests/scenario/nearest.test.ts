import { describe, expect, it } from 'vitest';
import { suggestion } from '../../src/scenario/nearest.ts';

describe('suggestion', () => {
  const known = ['every', 'pieces', 'due-after', 'finished-goods'];

  it.each([
    ['evry', '; did you mean "every"?'],
    ['due', '; did you mean "due-after"?'],
    ['finished', '; did you mean "finished-goods"?'],
    ['customers', '; known here: every, pieces, due-after, finished-goods'],
    ['fi', '; known here: every, pieces, due-after, finished-goods'],
  ])('for %s', (word, said) => {
    expect(suggestion(word, known)).toBe(said);
  });

  it('goes by likeness where several words begin like this one', () => {
    expect(suggestion('gauge', ['gauge one', 'gauge two', 'gauges'])).toBe('; did you mean "gauges"?');
  });
});
