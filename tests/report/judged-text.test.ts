import { describe, expect, it } from 'vitest';
import type { Judged } from '../../src/experiment/paired.ts';
import { bestText, moreText, wholeVerdict } from '../../src/report/judged-text.ts';

const judged = (given: Partial<Judged>): Judged => ({
  difference: { value: 1, lower: -1, upper: 3, level: 0.95, runs: 9, method: 't' },
  ...{ verdict: 'undecided', surely: null, more: null },
  ...given,
});

describe('the words of a verdict', () => {
  it.each([
    [1, 'about 1'],
    [37, 'about 37'],
    [99, 'about 99'],
    [121, 'about 130'],
    [1234, 'about 1300'],
    [9901, 'about 10000'],
  ])('give %d more runs as %s', (more, told) => {
    expect(wholeVerdict(judged({ more }), 0)).toBe(`undecided: run ${told} more`);
  });

  it('say why it cannot be told how many', () => {
    expect(moreText(judged({}), 0.5)).toBe(
      'how many more cannot be told, as the difference seems just what is worth having',
    );
    expect(moreText(judged({}), 0)).toBe(
      'how many more cannot be told, as the runs show no difference at all',
    );
    expect(moreText(judged({ verdict: 'better' }), 0)).toBe('');
  });

  it('say beside it what is sure', () => {
    expect(wholeVerdict(judged({ surely: 'worse', more: 12 }), 2)).toBe(
      'undecided: run about 12 more (surely worse, but not surely by enough)',
    );
    expect(wholeVerdict(judged({ verdict: 'no difference worth having', surely: 'better' }), 9)).toBe(
      'no difference worth having (surely better, but by too little)',
    );
    expect(wholeVerdict(judged({ verdict: 'better', surely: 'better' }), 0)).toBe('better');
  });

  it('name who may be best', () => {
    const best = (...may: boolean[]) =>
      bestText(
        may.map((mayBeBest, i) => ({ policy: 'abc'[i]!, mayBeBest })),
        'throughput',
      );
    expect(best(false, true, false)).toBe('Surely best in throughput: b.');
    expect(best(true, true, false)).toBe('May be best in throughput: a and b.');
    expect(best(true, true, true)).toBe('May be best in throughput: any of them.');
  });
});
