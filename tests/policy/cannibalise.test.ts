import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from '../line/small-line.ts';

interface Given {
  readonly every: number;
  readonly machines?: number;
  readonly cycle?: string;
  readonly counted?: string;
  readonly more?: string;
  readonly length?: number;
}

/** A machine whose cycles are so long that it always works, and whose element lasts so long. */
const machine = (
  name: string,
  { every, machines = 1, cycle = 'resumes', counted = 'working', more = '', length = 1000 }: Given,
) => `  ${name}:
    does: work
    takes: blank
    machines: ${machines}
    cycle: ${length} s
    breakdowns:
      burnt: { every: ${every} s, counted: ${counted}, repair: 2 s, cycle: ${cycle}, spare: element }
${more}    to: good`;

/** Its outcome after so many seconds, under the policy that takes elements out of stations. */
const outcomeAfter = (length: number, element: string, from: string, ...stations: string[]) =>
  ran(
    small(
      `${length} s`,
      `
stock:
  blank: { unlimited: true }
  element: { ${element} }
stations:
${stations.join('\n')}
policies:
  carry on: []
  borrow:
    - { do: cannibalise, spare: element, from: [${from}] }
`,
    ),
    'borrow',
  );

const NEVER = 10_000;

describe('cannibalise', () => {
  it('takes the spare out of another machine, which then waits for the one that is delivered', () => {
    // a fails at 10 and has the element of b, until 12. b stands from 10 on, has the next at 30 and works from 32.
    const outcome = outcomeAfter(
      40,
      'on-hand: 0, up-to: 1, lead-time: 30 s',
      'b',
      machine('a', { every: 10 }),
      machine('b', { every: 100 }),
    );
    expect(seconds(outcome, 'a', 40)).toEqual({ working: 38, down: 2 });
    expect(seconds(outcome, 'b', 40)).toEqual({ working: 18, awaiting_spare: 20, down: 2 });
    expect(outcome.counts.cannibalised).toBe(1);
    // One of one was late, though not for the machine that asked first.
    expect(outcome.stocks.element).toMatchObject({ fill_rate: 0, stock_outs: 1 });
  });

  it('leaves in the piece what life it has', () => {
    // b's had 15 s of life, of which 5 are left when a gets it at 10: a works 0-10 and 12-17.
    const given = (counted: string) =>
      outcomeAfter(
        30,
        'on-hand: 0',
        'b',
        machine('a', { every: 10 }),
        machine('b', { every: 15, counted, more: '' }),
      );
    for (const counted of ['working', 'clock']) {
      expect(seconds(given(counted), 'a', 30)).toEqual({ working: 15, awaiting_spare: 13, down: 2 });
      expect(seconds(given(counted), 'b', 30)).toEqual({ working: 10, awaiting_spare: 20 });
    }
  });

  it('takes nothing while there is a spare, or where the other waits itself', () => {
    // a 10-12 from stock, then at 22 from c, for b has waited since 15.
    const outcome = outcomeAfter(
      30,
      'on-hand: 1',
      'b, c',
      machine('a', { every: 10 }),
      machine('b', { every: 15 }),
      machine('c', { every: NEVER }),
    );
    // At 15 b itself is served from c, so that at 22 there is b again.
    expect(outcome.counts.cannibalised).toBe(2);
    expect(seconds(outcome, 'b', 30)).toEqual({ working: 20, down: 2, awaiting_spare: 8 });
    expect(seconds(outcome, 'c', 30)).toEqual({ working: 15, awaiting_spare: 15 });
    expect(seconds(outcome, 'a', 30)).toEqual({ working: 26, down: 4 });
  });

  it('does not take twice, nor give a piece back to where it was taken', () => {
    const outcome = outcomeAfter(
      100,
      'on-hand: 0',
      'a, b',
      machine('a', { every: 10 }),
      machine('b', { every: NEVER }),
    );
    expect(outcome.counts.cannibalised).toBe(1);
    expect(seconds(outcome, 'b', 100)).toEqual({ working: 10, awaiting_spare: 90 });
  });

  it('takes it from a machine that stands anyway before one that works', () => {
    const jammed = '      jam: { every: 8 s, counted: clock, repair: 30 s, cycle: resumes }\n';
    const outcome = outcomeAfter(
      30,
      'on-hand: 0',
      'b, c',
      machine('a', { every: 10 }),
      machine('b', { every: NEVER }),
      machine('c', { every: NEVER, more: jammed }),
    );
    expect(seconds(outcome, 'b', 30)).toEqual({ working: 30 });
    expect(seconds(outcome, 'c', 30)).toEqual({ working: 8, down: 22 });
  });

  it('takes it from a machine beside it only where that stands anyway', () => {
    // Both of the bank fail at 10; nothing is gained by moving the one piece about.
    const outcome = outcomeAfter(30, 'on-hand: 1', 'bank', machine('bank', { every: 10, machines: 2 }));
    expect(outcome.counts.cannibalised).toBe(0);
    // Of three, the first has the piece and is jammed from 16 on, when it has worked 14 s and the piece has 6 s left. Once
    // the other comes to wait, at 20, the second has it, and at 22 gives it to the other, which works 24-30.
    const jam = '      jam: { every: 14 s, counted: working, repair: 1 h, cycle: resumes }\n';
    const three = machine('bank', { every: 10, machines: 3, more: jam });
    const apart = outcomeAfter(30, 'on-hand: 1', 'bank', three, machine('other', { every: 20 }));
    expect(apart.counts.cannibalised).toBe(2);
    expect(seconds(apart, 'bank', 90)).toEqual({ working: 34, down: 18, awaiting_spare: 38 });
    expect(seconds(apart, 'other', 30)).toEqual({ working: 26, down: 2, awaiting_spare: 2 });
  });

  it('has it from a machine that is repaired later, for the one that has waited longest', () => {
    // b fails at 5 and waits, so that a and d, which fail at 10 and 12, find nothing. b has the piece that comes at 20 and
    // gives it to a at 22; d waits on, and so does b.
    const outcome = outcomeAfter(
      30,
      'on-hand: 0, up-to: 1, lead-time: 20 s',
      'b',
      machine('b', { every: 5 }),
      machine('a', { every: 10 }),
      machine('d', { every: 12 }),
    );
    expect(outcome.counts.cannibalised).toBe(1);
    expect(seconds(outcome, 'b', 30)).toEqual({ working: 5, awaiting_spare: 23, down: 2 });
    expect(seconds(outcome, 'a', 30)).toEqual({ working: 15, awaiting_spare: 13, down: 2 });
    expect(seconds(outcome, 'd', 30)).toEqual({ working: 12, awaiting_spare: 18 });
  });

  it.each([
    // b is stopped at 10 in a cycle of 15 s and stands until 32: 5 s are left, 15 s, or the part is gone.
    ['resumes', 1, 0],
    ['restarts', 0, 0],
    ['scraps', 0, 1],
  ])('stops a cycle that %s as its breakdown does', (cycle, good, scrapped) => {
    const outcome = outcomeAfter(
      40,
      'on-hand: 0, up-to: 1, lead-time: 30 s',
      'b',
      machine('a', { every: 10 }),
      machine('b', { every: 100, cycle, length: 15 }),
    );
    expect(outcome.counts).toMatchObject({ good, scrapped });
  });
});
