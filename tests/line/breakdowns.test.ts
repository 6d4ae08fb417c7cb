import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('several ways of breaking down', () => {
  it('count each by itself, by working time or by the clock', () => {
    // Works 0-7, jammed 7-8, works 8-10, worn by the clock 10-12, works 12-17 and so 14 s in all, jammed 17-18,
    // works 18-21; the clock would come again at 12 + 10.
    const body = blanks(`  only:
    does: work
    takes: blank
    cycle: 3 s
    breakdowns:
      jam: { every: 7 s, counted: working, repair: 1 s, cycle: resumes }
      leak: { every: 10 s, counted: clock, repair: 2 s, cycle: resumes }
    to: good`);
    const outcome = ran(small('21 s', body));
    expect(outcome.counts.good).toBe(5);
    expect(seconds(outcome, 'only', 21)).toEqual({ working: 17, down: 4 });
  });

  it('that overlap keep the station down until the last is repaired', () => {
    // Each counts anew from the end of its own repair. The long one: 4-10 and 14-20; the short one: 6-8 and 14-16.
    const body = blanks(`  only:
    does: work
    takes: blank
    cycle: 100 s
    breakdowns:
      long: { every: 4 s, counted: clock, repair: 6 s, cycle: resumes }
      short: { every: 6 s, counted: clock, repair: 2 s, cycle: resumes }
    to: good`);
    expect(seconds(ran(small('20 s', body)), 'only', 20)).toEqual({ working: 8, down: 12 });
  });

  it('come by the clock to a station that is blocked or starved, too', () => {
    // a is blocked from 4 to 22 but for 5-9 and 14-18, when it is down. b, which takes 20 s, waits 0-2.
    const body = blanks(`  a:
    does: work
    takes: blank
    cycle: 2 s
    breakdowns: { stop: { every: 5 s, counted: clock, repair: 4 s, cycle: resumes } }
    to: b
  b: { does: work, buffer: 0, cycle: 20 s, to: c }
  c:
    does: work
    buffer: 0
    cycle: 1 s
    breakdowns: { stop: { every: 10 s, counted: clock, repair: 3 s, cycle: resumes } }
    to: good`);
    const outcome = ran(small('22 s', body));
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 4, blocked: 10, down: 8 });
    expect(seconds(outcome, 'c', 22)).toEqual({ starved: 19, down: 3 });
  });
});

describe('a crew of one for three stations that break down together', () => {
  const three = (rules: string, priorities = ['', '', ''], every = ['10 s', '10 s', '10 s']) =>
    `${blanks(
      ['a', 'b', 'c']
        .map(
          (name, i) => `  ${name}:
    does: work
    takes: blank
    cycle: 100 s
    breakdowns: { stop: { every: ${every[i]}, counted: working, repair: 5 s, cycle: resumes, crew: fitter${priorities[i]} } }
    to: good`,
        )
        .join('\n'),
    )}
crew:
  fitter: { ${rules} }`;

  it('repairs in the order of the calls', () => {
    // a 10-15, b 15-20, c 20-25.
    const outcome = ran(small('25 s', three('number: 1')));
    expect(seconds(outcome, 'a', 25)).toEqual({ working: 20, down: 5 });
    expect(seconds(outcome, 'b', 25)).toEqual({ working: 15, awaiting_technician: 5, down: 5 });
    expect(seconds(outcome, 'c', 25)).toEqual({ working: 10, awaiting_technician: 10, down: 5 });
    expect(outcome.crewBusyShares.fitter).toBeCloseTo(15 / 25, 9);
  });

  it('repairs by priority once it is free, without leaving the repair under way', () => {
    // a fails at 10 and is being repaired when b, at 11, and c, at 12, fail: c 15-20, b 20-25.
    const body = three(
      'number: 1, serves: priority',
      [', priority: 3', ', priority: 2', ', priority: 1'],
      ['10 s', '11 s', '12 s'],
    );
    const outcome = ran(small('25 s', body));
    expect(seconds(outcome, 'a', 25)).toEqual({ working: 20, down: 5 });
    expect(seconds(outcome, 'b', 25)).toEqual({ working: 11, awaiting_technician: 9, down: 5 });
    expect(seconds(outcome, 'c', 25)).toEqual({ working: 12 + 5, awaiting_technician: 3, down: 5 });
  });

  it('lets the station wait while it moves', () => {
    // From a to b takes 2 s: b is repaired 17-22.
    const outcome = ran(small('22 s', three('number: 1, move: 2 s')));
    expect(seconds(outcome, 'b', 22)).toEqual({ working: 10, awaiting_technician: 7, down: 5 });
  });

  it('leaves nobody waiting when there are enough of them', () => {
    const outcome = ran(small('15 s', three('number: 3')));
    for (const name of ['a', 'b', 'c']) expect(seconds(outcome, name, 15)).toEqual({ working: 10, down: 5 });
  });
});

describe('a station that waits for a technician and is stopped otherwise, too', () => {
  it('counts as down while any of the stops is being dealt with', () => {
    // a is repaired 10-20. b fails at 10 and waits; its leak, which needs nobody, is 12-15; it is repaired 20-30.
    const body = `${blanks(`  a:
    does: work
    takes: blank
    cycle: 100 s
    breakdowns: { stop: { every: 10 s, counted: working, repair: 10 s, cycle: resumes, crew: fitter } }
    to: good
  b:
    does: work
    takes: blank
    cycle: 100 s
    breakdowns:
      stop: { every: 10 s, counted: working, repair: 10 s, cycle: resumes, crew: fitter }
      leak: { every: 12 s, counted: clock, repair: 3 s, cycle: resumes }
    to: good`)}
crew:
  fitter: { number: 1 }`;
    expect(seconds(ran(small('22 s', body)), 'b', 22)).toEqual({
      ...{ working: 10, awaiting_technician: 2 + 5, down: 3 + 2 },
    });
  });
});

describe('while down', () => {
  const blocked = (
    whileDown: string,
  ) => `${blanks(`  a: { does: work, takes: blank, cycle: 1 s, while-down: ${whileDown}, to: b }
  b: { does: work, buffer: 0, cycle: 9 s, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: a, at: 5 s, for: 10 s }`;

  it.each(['unloads', 'loads-and-unloads'])(
    'a station that %s passes on what it has finished',
    (whileDown) => {
      // a is blocked from 2 with its second part, down 5-15, hands over at 10, works 15-16; b works 1-10 and 10-19.
      const outcome = ran(small('16 s', blocked(whileDown)));
      expect(seconds(outcome, 'b', 16)).toEqual({ starved: 1, working: 15 });
      expect(seconds(outcome, 'a', 16)).toEqual({ working: 3, blocked: 3, down: 10 });
      // One that loads as well has its third part on from 10, the other from 15 on.
      expect(ran(small('12 s', blocked(whileDown))).counts.started).toBe(whileDown === 'unloads' ? 2 : 3);
    },
  );

  it('a station that does nothing keeps what it has finished until it is repaired', () => {
    // a hands over at 15; b is starved 10-15.
    const outcome = ran(small('20 s', blocked('nothing')));
    expect(seconds(outcome, 'a', 20)).toEqual({ working: 3, blocked: 7, down: 10 });
    expect(seconds(outcome, 'b', 20)).toEqual({ starved: 6, working: 14 });
    expect(outcome.counts).toMatchObject({ started: 3, good: 1 });
  });

  it('a station that does nothing lets others have the room it cannot use', () => {
    // p and q feed b, which takes 9 s and has no place in front. p is done at 1 and at 2, q at 3 and blocked behind p.
    // p is down 5-15, so at 10 q's part is taken; p's enters at 19.
    const body = `${blanks(`  p: { does: work, takes: blank, cycle: 1 s, while-down: nothing, to: b }
  q: { does: work, takes: blank, cycle: 3 s, to: b }
  b: { does: work, buffer: 0, cycle: 9 s, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: p, at: 5 s, for: 10 s }`;
    const outcome = ran(small('19 s', body));
    expect(seconds(outcome, 'q', 19)).toEqual({ working: 6, blocked: 7 + 6 });
    expect(seconds(outcome, 'p', 19)).toEqual({ working: 2, blocked: 3 + 4, down: 10 });
    expect(seconds(outcome, 'b', 19)).toEqual({ starved: 1, working: 18 });
  });

  const taking = (places: number) => `${blanks(`  a: { does: work, takes: blank, cycle: 5 s, to: b }
  b: { does: work, buffer: ${places}, cycle: 2 s, while-down: loads-and-unloads, to: good }`)}
disturbances:
  stoppage: { disturbs: station, station: b, at: 4 s, for: 10 s }`;

  it('a station that loads takes one part and works on it when it is repaired', () => {
    // b is down 4-14 and takes the part of 5 over; that of 10 blocks a until 16.
    const outcome = ran(small('16 s', taking(0)));
    expect(seconds(outcome, 'a', 16)).toEqual({ working: 10, blocked: 6 });
    expect(seconds(outcome, 'b', 16)).toEqual({ starved: 4, down: 10, working: 2 });
    expect(outcome.counts.good).toBe(1);
  });

  it('a station that loads takes one part from its buffer, too', () => {
    // The part of 10 stands in the buffer, that of 15 blocks a until 16.
    const outcome = ran(small('16 s', taking(1)));
    expect(seconds(outcome, 'a', 16)).toEqual({ working: 15, blocked: 1 });
  });
});

describe('a cycle interrupted several times', () => {
  const twice = (
    first: string,
    second: string,
  ) => `${blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }')}
disturbances:
  one: { disturbs: station, station: only, cycle: ${first}, at: 4 s, for: 10 s }
  two: { disturbs: station, station: only, cycle: ${second}, at: 6 s, for: 2 s }`;

  it.each([
    // Goes on at 14 with 6 s left.
    ['resumes', 'resumes', { started: 2, good: 1, scrapped: 0 }, 20],
    // Begins anew at 14.
    ['resumes', 'restarts', { started: 2, good: 1, scrapped: 0 }, 24],
    ['restarts', 'resumes', { started: 2, good: 1, scrapped: 0 }, 24],
    // A fresh part begins at 14.
    ['scraps', 'restarts', { started: 3, good: 1, scrapped: 1 }, 24],
    ['resumes', 'scraps', { started: 3, good: 1, scrapped: 1 }, 24],
  ])('meets the severest fate: %s and %s', (first, second, counts, end) => {
    const body = twice(first, second);
    expect(ran(small(`${end} s`, body)).counts).toMatchObject(counts);
    expect(ran(small(`${end - 1} s`, body)).counts.good).toBe(0);
  });
});
