import { describe, expect, it } from 'vitest';
import { blanks, ran, seconds, small } from './small-line.ts';

describe('handling', () => {
  it.each([
    ['by the station itself', '', ''],
    ['by a robot of its own', 'by: robot, ', '\ncrew:\n  robot: { number: 1 }'],
  ])('%s comes before and after each cycle', (_, by, crew) => {
    // Loaded 0-2, works to 7, unloaded to 8, and so on every 8 s.
    const body = `${blanks(
      `  only: { does: work, takes: blank, cycle: 5 s, handling: { ${by}load: 2 s, unload: 1 s }, to: good }`,
    )}${crew}`;
    const outcome = ran(small('24 s', body));
    expect(outcome.counts.good).toBe(3);
    expect(seconds(outcome, 'only', 24)).toEqual({ working: 24 });
    if (by) expect(outcome.crewBusyShares.robot).toBeCloseTo(3 / 8, 9);
  });

  it('is not work that wears: a breakdown by working time counts the cycles alone', () => {
    // Worn after two cycles of 5 s, at the end of the second at 2 + 5 + 2 + 5 = 14; the third starts at 16 and stops.
    const body = blanks(`  only:
    does: work
    takes: blank
    cycle: 5 s
    handling: { load: 2 s }
    breakdowns: { stop: { every: 10 s, counted: working, repair: 3 s, cycle: resumes } }
    to: good`);
    expect(seconds(ran(small('24 s', body)), 'only', 24)).toEqual({ working: 21, down: 3 });
  });

  it('is not interrupted when the station stops meanwhile, and the cycle waits for its end', () => {
    // Loaded 0-4 although down 1-6; works 6-11.
    const body = `${blanks(
      '  only: { does: work, takes: blank, cycle: 5 s, handling: { load: 4 s }, to: good }',
    )}
disturbances:
  stoppage: { disturbs: station, station: only, at: 1 s, for: 5 s }`;
    const outcome = ran(small('11 s', body));
    expect(outcome.counts.good).toBe(1);
    expect(seconds(outcome, 'only', 11)).toEqual({ working: 6, down: 5 });
  });
});

describe('a robot shared by two stations', () => {
  const shared = `${blanks(`  a: { does: work, takes: blank, cycle: 5 s, handling: { by: robot, load: 2 s, unload: 2 s }, to: good }
  b: { does: work, takes: blank, cycle: 5 s, handling: { by: robot, load: 2 s, unload: 2 s }, to: good }`)}
crew:
  robot: { number: 1 }`;

  it('serves whoever called first, and the other waits', () => {
    // The robot loads a 0-2 and b 2-4, unloads a 7-9 and b 9-11, loads a 11-13 and b 13-15, unloads a 18-20, b 20-22.
    const outcome = ran(small('22 s', shared));
    expect(outcome.counts.good).toBe(4);
    // a waits 9-11 and 20-22, b waits 0-2 and 11-13.
    expect(seconds(outcome, 'a', 22)).toEqual({ working: 18, awaiting_handling: 4 });
    expect(seconds(outcome, 'b', 22)).toEqual({ working: 18, awaiting_handling: 4 });
    expect(outcome.crewBusyShares.robot).toBeCloseTo(16 / 22, 9);
  });

  it('is waited for across the end of the warm-up', () => {
    // The same run counted from 10 s on.
    const outcome = ran(small('12 s', shared, '10 s'));
    expect(seconds(outcome, 'a', 12)).toEqual({ working: 9, awaiting_handling: 3 });
    expect(seconds(outcome, 'b', 12)).toEqual({ working: 10, awaiting_handling: 2 });
    // Busy 10-15 and 18-22.
    expect(outcome.crewBusyShares.robot).toBeCloseTo(9 / 12, 9);
  });
});

describe('a robot called from three stations at once', () => {
  /** Each wants to be loaded at 0 for 4 s; then all work beyond the end of the run. */
  const three = (rules: string, priorities = ['', '', '']) =>
    `${blanks(
      ['a', 'b', 'c']
        .map(
          (name, i) =>
            `  ${name}: { does: work, takes: blank, cycle: 100 s, handling: { by: robot, load: 4 s${priorities[i]} }, to: good }`,
        )
        .join('\n'),
    )}
crew:
  robot: { ${rules} }`;
  const waits = (body: string) => {
    const outcome = ran(small('20 s', body));
    return ['a', 'b', 'c'].map((name) => seconds(outcome, name, 20).awaiting_handling ?? 0);
  };

  it.each([
    // a, b, c.
    ['first-come', 'number: 1', [0, 4, 8]],
    // From a to b 3 s, and again to c: a 0-4, b 7-11, c 14-18.
    ['first-come with moves', 'number: 1, move: 3 s', [0, 7, 14]],
    // From a to c takes 1 s, to b 3 s: a 0-4, c 5-9, b 12-16.
    [
      'nearest',
      'number: 1, serves: nearest, move: 3 s, moves: [{ between: [c, a], takes: 1 s }]',
      [0, 12, 5],
    ],
    // The exception holds for first-come too, where the way is from b to c.
    ['exceptions', 'number: 1, move: 3 s, moves: [{ between: [c, b], takes: 1 s }]', [0, 7, 12]],
    // One loads a and then goes to c, 4-5; the other comes to b at 3.
    ['two robots', 'number: 2, move: 3 s, moves: [{ between: [a, c], takes: 1 s }]', [0, 3, 5]],
  ])('serves by the rule: %s', (_, rules, expected) => {
    expect(waits(three(rules))).toEqual(expected);
  });

  it('serves by priority when it is free again, and whoever calls first while it is free', () => {
    const priorities = [', priority: 3', ', priority: 2', ', priority: 1'];
    expect(waits(three('number: 1, serves: priority', priorities))).toEqual([0, 8, 4]);
  });

  it('is busy while it moves', () => {
    const outcome = ran(small('18 s', three('number: 1, move: 3 s')));
    expect(outcome.crewBusyShares.robot).toBeCloseTo(1, 9);
  });
});
