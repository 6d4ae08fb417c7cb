import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from '../line/small-line.ts';

/** A blank every 10 s from 10 s on, trimmed in 2 s; the burr is too high from the third cut of a tool on. */
const line = (setUp: string, ...responses: string[]) => `
stock:
  blank: { on-hand: 6 }
stations:
  feed: { does: work, takes: blank, cycle: 10 s, to: trimming }
  trimming:
    does: trim
    buffer: 5
    cycle: 2 s
    tool: { renewed-by: [blade], burr: { per: 1, grows: 0.1 mm, most: 0.15 mm, deburring: 1 s } }
    set-ups: { blade: { ${setUp}, takes: 3 s } }
    to: good
policies:
  carry on: []
  sharp: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const change = (below: number) =>
  `do: change-tool, station: trimming, when: { stock: blank, below: ${below} }`;
const seldom = 'cycles: 99';

describe('change-tool', () => {
  it('renews the tool when it comes into force, after the cycle, as the set-up does', () => {
    // Low at 20 s, when the second is put on: changed from 22 to 25 s. The next two are cut clean, the last two not.
    const outcome = ran(small('70 s', line(seldom, change(4))), 'sharp');
    expect(seconds(outcome, 'trimming', 70)).toEqual({ set_up: 3, working: 14, starved: 53 });
    expect(outcome.counts.deburred).toBe(2);
    expect(outcome.did).toEqual({ tool_changes_trimming: 1 });
    const before = ran(small('70 s', line(seldom, change(4))));
    expect(before.counts.deburred).toBe(4);
    expect(before.did).toBeUndefined();
  });

  it('is done by an idle machine at once, and from the start where it is in force then', () => {
    expect(seconds(ran(small('9 s', line(seldom, change(9))), 'sharp'), 'trimming', 9)).toEqual({
      set_up: 3,
      starved: 6,
    });
  });

  it('is not done twice when asked for twice', () => {
    const outcome = ran(small('70 s', line(seldom, change(4), `${change(4)}, by: blade`)), 'sharp');
    expect(seconds(outcome, 'trimming', 70).set_up).toBe(3);
  });

  it('counts anew until the next', () => {
    // After the second and the fifth cut, and not after the third and the sixth.
    const set = (policy: string, length: number) =>
      seconds(ran(small(`${length} s`, line('cycles: 3', change(4))), policy), 'trimming', length).set_up;
    expect(set('sharp', 50)).toBe(3);
    expect(set('sharp', 58)).toBe(6);
    expect(set('carry on', 50)).toBe(3);
    expect(set('carry on', 60)).toBe(3);
    expect(set('carry on', 70)).toBe(6);
  });

  it('leaves a tool that is changed by the clock to its clock, counted anew', () => {
    // By the clock at 24 s, 24 s after each change: asked for at 20 s it is done from 22 to 25 s, and again at 49 s.
    const at = (length: number) =>
      seconds(
        ran(small(`${length} s`, line('every: 24 s, counted: clock', change(4))), 'sharp'),
        'trimming',
        length,
      ).set_up;
    expect(at(48)).toBe(3);
    expect(at(52)).toBe(6);
  });
});
