import { describe, expect, it } from 'vitest';
import { traced } from '../../../src/experiment/traced.ts';
import { partLines } from '../../../src/report/trace/part-lines.ts';
import { blanks, small } from '../small-line.ts';
import { expectAgreement } from './replayed.ts';

const of = (length: string, body: string) => {
  const scenario = small(length, body);
  const { trace, outcome } = traced(scenario, 'carry on', 1);
  expectAgreement(trace, outcome);
  const story = (part: number) =>
    partLines(trace, scenario, part, false).map(({ at, station, text }) => `${at} ${station}: ${text}`);
  return { trace, story };
};

/** A part every 10 s; \`second\` takes 12 s and has one place in front. */
const two = blanks(`
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: 1, cycle: 12 s, BREAKDOWNS to: good }
`);
const plain = two.replace('BREAKDOWNS', '');

describe('what is written down besides parts and stations, worked out by hand', () => {
  it('which finished goods went to which order: those of the start first, then the oldest', () => {
    // Parts leave as good at 10, 20, ... s, orders of two come at 25 and 50 s; one is there at the start.
    const { trace, story } = of(
      '55 s',
      `${blanks('  first: { does: work, takes: blank, cycle: 10 s, to: good }')}
demand: { every: 25 s, pieces: 2, due-after: 1 s, finished-goods: { at-start: 1, most: 8 } }
`,
    );
    const { level, orders, handed } = trace.demand!;
    expect(level).toMatchObject({ at: [0, 10, 20, 25, 30, 40, 50], value: [1, 2, 3, 1, 2, 3, 2] });
    expect(orders).toEqual([
      { came: 25, served: 25 },
      { came: 50, served: 50 },
    ]);
    expect(handed).toEqual([
      { part: 1, order: 1, at: 25 },
      { part: 2, order: 2, at: 50 },
      { part: 3, order: 2, at: 50 },
    ]);
    expect(story(2).at(-1)).toBe('50 finished goods: goes to order 2, after 30 s there');
    expect(story(4).at(-1)).toBe('55 finished goods: still there as the run ends');
  });

  it('when a part is put on a carrier and taken off, and waits for one', () => {
    // Two carriers: the first is back 5 s after part 1 left at 22 s, and only then part 3 is started.
    const { trace, story } = of(
      '40 s',
      `${plain}
carriers: { nest: { number: 2, from: first, to: second, return: 5 s } }
`,
    );
    const own = trace.events.filter(({ part }) => part === 1).map(({ at, kind }) => `${at} ${kind}`);
    expect(own).toEqual([
      ...['0 started', '0 begins', '0 on-carrier', '10 ends', '10 waits', '10 begins'],
      ...['22 ends', '22 off-carrier', '22 good'],
    ]);
    expect(trace.parts[2]!.started).toBe(27);
    expect(story(1)).toContain('0 first: put on a carrier (nest)');
    expect(story(1)).toContain('22 second: taken off its carrier (nest)');
  });

  it('who of a crew was sent where, when they came and what for', () => {
    // The second station has worked 15 s at 25 s; the fitter stands at the first, 4 s away, and repairs for 6 s.
    const jam =
      'breakdowns: { jam: { every: 15 s, counted: working, repair: 6 s, cycle: resumes, crew: fitter } },';
    const { trace, story } = of(
      '45 s',
      `${two.replace('BREAKDOWNS', jam)}
crew: { fitter: { number: 1, serves: first-come, move: 4 s } }
`,
    );
    expect(trace.crews).toEqual([
      {
        ...{ name: 'fitter', number: 1 },
        jobs: [
          {
            ...{ member: 1, station: 'second', machine: 'second', job: 'jam' },
            ...{ called: 25, sent: 25, came: 29, left: 35 },
          },
        ],
      },
    ]);
    expect(story(2)).toContain('29 second: fitter comes for "jam", done 6 s later');
    expect(story(1).join()).not.toContain('fitter');
  });
});
