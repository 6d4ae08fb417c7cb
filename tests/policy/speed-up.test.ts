import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from '../line/small-line.ts';

/** One station that takes a blank every 10 s from 0 s on. */
const body = (stock: string, ...responses: string[]) => `
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  carry on: []
  hurry: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const good = (length: string, text: string) => ran(small(length, text), 'hurry').counts.good;
const twice = 'do: speed-up, station: only, to: 200 %, when: { stock: blank, below: 4 }';

describe('speed-up', () => {
  it('shortens the cycles that begin while it is in force', () => {
    // Three left from 20 s on: cycles of 10 s begun at 0, 10 and 20 s, of 5 s at 30, 35 and 40 s.
    for (const [i, end] of [10, 20, 30, 35, 40, 45].entries()) {
      expect(good(`${end} s`, body('on-hand: 6', twice))).toBe(i + 1);
      expect(good(`${end - 1} s`, body('on-hand: 6', twice))).toBe(i);
    }
  });

  it('ends when there is enough again', () => {
    // Six ordered at 20 s come at 32 s, in the cycle from 30 to 35 s: the next take 10 s again.
    const text = body('on-hand: 6, reorder-at: 3, order: 6, lead-time: 12 s', twice);
    for (const [i, end] of [10, 20, 30, 35, 45, 55].entries()) {
      expect(good(`${end} s`, text)).toBe(i + 1);
      expect(good(`${end - 1} s`, text)).toBe(i);
    }
  });

  it('sets the same as slow, so that the later of the policy holds', () => {
    const slow = 'do: slow, station: only, to: 50 %, when: { stock: blank, below: 4 }';
    // 30 s, then three cycles of 20 s or of 5 s.
    expect(good('90 s', body('on-hand: 6', twice, slow))).toBe(6);
    expect(good('89 s', body('on-hand: 6', twice, slow))).toBe(5);
    expect(good('45 s', body('on-hand: 6', slow, twice))).toBe(6);
  });

  it('wears a station by the time it works, so that more is done before it breaks down', () => {
    // Broken after 12 s of work: of 10 s a cycle, in the second; at double speed from the start, in the third.
    const worn = 'breakdowns: { jam: { every: 12 s, counted: working, repair: 100 s, cycle: resumes } }';
    const text = body('on-hand: 9', twice.replace('below: 4', 'below: 99')).replace(
      'to: good',
      `${worn}, to: good`,
    );
    const outcome = ran(small('50 s', text), 'hurry');
    expect(outcome.counts.good).toBe(2);
    expect(seconds(outcome, 'only', 50)).toEqual({ working: 12, down: 38 });
    const before = ran(
      small('50 s', blanks(`  only: { does: work, takes: blank, cycle: 10 s, to: good, ${worn} }`)),
    );
    expect(before.counts.good).toBe(1);
  });
});
