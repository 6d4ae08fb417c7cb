import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

const only = (cycle: number, tasks: string) =>
  blanks(`  only: { does: work, takes: blank, cycle: ${cycle} s, to: good, ${tasks} }`);

describe('a set-up', () => {
  it('by cycles comes after so many', () => {
    // Works 0-6, set up 6-10, works 10-16, set up 16-20.
    const outcome = ran(small('20 s', only(2, 'set-ups: { tool: { cycles: 3, takes: 4 s } }')));
    expect(outcome.counts.good).toBe(6);
    expect(seconds(outcome, 'only', 20)).toEqual({ working: 12, set_up: 8 });
  });

  it('by working time waits for the end of the cycle in which it falls due, and counts anew from there', () => {
    // Due after 3 s of work, in the second cycle: set up 4-8. Due again after 4 + 3: works 8-12, set up 12-16.
    const tasks = 'set-ups: { clean: { every: 3 s, counted: working, takes: 4 s } }';
    const outcome = ran(small('16 s', only(2, tasks)));
    expect(seconds(outcome, 'only', 16)).toEqual({ working: 8, set_up: 8 });
  });

  it('by the clock waits for the end of the cycle of a busy station', () => {
    // Due at 5: set up 6-10. Due at 15: works 10-16, set up 16-20.
    const tasks = 'set-ups: { clean: { every: 5 s, counted: clock, takes: 4 s } }';
    const outcome = ran(small('20 s', only(3, tasks)));
    expect(seconds(outcome, 'only', 20)).toEqual({ working: 12, set_up: 8 });
  });

  it('takes a piece from stock first, and waits for one', () => {
    // Works 0-6 and takes the tool there is for 6-10; works 10-16, waits for one that comes 20 s after the first, set up 26-30.
    const scenario = only(2, 'set-ups: { tool: { cycles: 3, takes: 4 s, spare: cutter } }').replace(
      'stock:',
      'stock:\n  cutter: { on-hand: 1, up-to: 1, lead-time: 20 s }',
    );
    const outcome = ran(small('30 s', scenario));
    expect(seconds(outcome, 'only', 30)).toEqual({ working: 12, set_up: 8, awaiting_spare: 10 });
    expect(outcome.stocks.cutter).toMatchObject({ stock_outs: 1, fill_rate: 0.5, delivered_pieces: 1 });
    // Each is put aside for as long as the set-up takes.
    expect(outcome.stocks.cutter!.mean_allocated_pieces).toBeCloseTo(8 / 30, 12);
    expect(outcome.stocks.cutter!.mean_waiting_pieces).toBeCloseTo(10 / 30, 12);
  });

  const idle = (first: number, every: number, takes: number) =>
    blanks(`  a: { does: work, takes: blank, cycle: ${first} s, to: b }
  b:
    does: work
    buffer: 0
    cycle: 1 s
    set-ups: { clean: { every: ${every} s, counted: clock, takes: ${takes} s } }
    to: good`);

  it('by the clock is done at once by an idle station', () => {
    // Set up 5-9, 14-18 and 23-27; works 20-21.
    const outcome = ran(small('27 s', idle(20, 5, 4)));
    expect(seconds(outcome, 'b', 27)).toEqual({ starved: 14, working: 1, set_up: 12 });
  });

  it('that falls due at the instant a part is done in front comes first, and without a place between it waits', () => {
    // Set up 10-13 and 23-26, when the first part of a is done.
    const outcome = ran(small('26 s', idle(23, 10, 3)));
    expect(seconds(outcome, 'a', 26)).toEqual({ working: 23, blocked: 3 });
    expect(seconds(outcome, 'b', 26)).toEqual({ starved: 20, set_up: 6 });
  });

  it('is held up while a finished part cannot leave', () => {
    // b works 1-11. a is due after its second part, done at 2, which leaves at 11: set up 11-14.
    const body =
      blanks(`  a: { does: work, takes: blank, cycle: 1 s, set-ups: { tool: { cycles: 2, takes: 3 s } }, to: b }
  b: { does: work, buffer: 0, cycle: 10 s, to: good }`);
    expect(seconds(ran(small('14 s', body)), 'a', 14)).toEqual({ working: 2, blocked: 9, set_up: 3 });
  });

  it('is finished after the end of the shift', () => {
    // Works 0-4, the shift ends at 5, set up 4-8, off to the end.
    const body = `${only(2, 'calendar: early, set-ups: { tool: { cycles: 2, takes: 4 s } }')}
calendars:
  early: { shifts: [{ days: [mon], begins: 0 s, lasts: 5 s }] }`;
    expect(seconds(ran(small('10 s', body)), 'only', 10)).toEqual({ working: 4, set_up: 4, off_shift: 2 });
  });
});

describe('planned maintenance', () => {
  it('shows as down, and comes before a set-up due together with it', () => {
    // Works 0-4, maintained 4-7, set up 7-8, works 8-12.
    const tasks =
      'set-ups: { tool: { cycles: 2, takes: 1 s } }, maintenance: { oil: { cycles: 2, takes: 3 s } }';
    expect(seconds(ran(small('7 s', only(2, tasks))), 'only', 7)).toEqual({ working: 4, down: 3 });
    expect(seconds(ran(small('12 s', only(2, tasks))), 'only', 12)).toEqual({
      ...{ working: 8, down: 3, set_up: 1 },
    });
  });
});

describe('a set-up by a crew', () => {
  const two = (rules: string, priorities = ['', '', '']) =>
    `${blanks(
      ['a', 'b', 'c']
        .map(
          (name, i) =>
            `  ${name}: { does: work, takes: blank, cycle: 2 s, set-ups: { tool: { cycles: 2, takes: 3 s, crew: fitter${priorities[i]} } }, to: good }`,
        )
        .join('\n'),
    )}
crew:
  fitter: { ${rules} }`;

  it('begins when one of it is there, and the station waits for a technician until then', () => {
    // All are due at 4: a 4-7, b 7-10, c 10-13.
    const outcome = ran(small('11 s', two('number: 1')));
    expect(seconds(outcome, 'a', 11)).toEqual({ working: 4 + 4, set_up: 3 });
    expect(seconds(outcome, 'b', 11)).toEqual({ working: 4 + 1, awaiting_technician: 3, set_up: 3 });
    expect(seconds(outcome, 'c', 11)).toEqual({ working: 4, awaiting_technician: 6, set_up: 1 });
    expect(outcome.crewBusyShares.fitter).toBeCloseTo(7 / 11, 9);
  });

  it('goes by priority where the crew does', () => {
    const outcome = ran(
      small('10 s', two('number: 1, serves: priority', [', priority: 2', ', priority: 2', ', priority: 1'])),
    );
    // a is served at once, for the fitter is free; then c.
    expect(seconds(outcome, 'b', 10)).toEqual({ working: 4, awaiting_technician: 6 });
    expect(seconds(outcome, 'c', 10)).toEqual({ working: 4, awaiting_technician: 3, set_up: 3 });
  });
});
