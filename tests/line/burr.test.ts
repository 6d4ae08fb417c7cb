import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { ran, seconds, small } from './small-line.ts';

/** Trims a blank in 4 s after another; the burr grows by 0.01 mm a cut from 0.02 mm. */
const cell = (more: string, burr = '') => `
stock:
  blank: { unlimited: true }
stations:
  cutting: { does: work, takes: blank, cycle: 1 s, to: trimming }
  trimming:
    does: trim
    buffer: 1
    cycle: 4 s
    tool:
      renewed-by: [blade]
      burr: { first: 0.02 mm, per: 100, grows: 1 mm, most: 0.045 mm, deburring: 3 s${burr} }
    set-ups: { blade: { cycles: 5, takes: 2 s } }
    ${more}
    to: good
`;

/** The designed time of each cycle, s. */
function cycles(body: string, until: number): number[] {
  const line = prepare(small(`${until} s`, body), 'carry on', 1);
  const { operation } = line.stations.get('trimming')!.machines[0]!;
  const seen: number[] = [];
  const begin = operation.begin.bind(operation);
  operation.begin = (machine) => {
    const begun = begin(machine);
    if (begun) seen.push(machine.cycle);
    return begun;
  };
  line.calendar.run(until);
  return seen;
}

describe('a burr', () => {
  it('above the most is removed by hand, which takes time, until a new tool cuts', () => {
    // 0.02, 0.03, 0.04, 0.05 and 0.06 mm: the fourth and the fifth of each tool.
    expect(cycles(cell(''), 60).slice(0, 10)).toEqual([4, 4, 4, 7, 7, 4, 4, 4, 7, 7]);
    // From 1 s on 26 s of work and 2 s of set-up, twice.
    const outcome = ran(small('57 s', cell('')));
    expect(outcome.counts).toMatchObject({ good: 10, deburred: 4 });
    expect(seconds(outcome, 'trimming', 57)).toEqual({ starved: 1, working: 52, set_up: 4 });
  });

  it('differs from part to part by a deviate of the part', () => {
    // Part k meets cut k modulo 5 either way, and its own deviate, so other times of set-up change nothing.
    const burr = ', own-sd: 0.02 mm';
    const one = cycles(cell('', burr), 3000);
    expect(one.length).toBeGreaterThan(400);
    const first = one.filter((_, k) => k % 5 === 0);
    // A deviate above 1.25 standard deviations, which a tenth of parts have, and not the same ones in each round.
    expect(new Set(first)).toEqual(new Set([4, 7]));
    const slow = cycles(cell('', burr).replace('takes: 2 s', 'takes: 9 s'), 3000);
    expect(slow.length).toBeGreaterThan(400);
    expect(slow).toEqual(one.slice(0, slow.length));
  });

  it('is no matter of a second visit, which cuts nothing', () => {
    // Half of the parts come back once or more.
    const again = cell('').replace('to: good\n', 'to: { by: share, routes: { good: 50 %, back: 50 % } }\n');
    const body = `${again}  back: { does: work, buffer: unlimited, cycle: 0 s, to: trimming }
`.replace('cycles: 5', 'cycles: 100000');
    // A tool that is never renewed leaves all but three parts to deburr.
    const { counts } = ran(small('2 h', body.replace('cycle: 1 s', 'cycle: 30 s')));
    expect(counts.good).toBeGreaterThan(200);
    expect(counts.deburred).toBeGreaterThanOrEqual(counts.good - 3);
    expect(counts.deburred).toBeLessThanOrEqual(counts.started - 3);
  });

  it('of a cut that is scrapped with its part is not counted, and the tool has not made that cut', () => {
    const jam = 'breakdowns: { jam: { every: 6 s, counted: working, repair: 1 s, cycle: scraps } }';
    // Cuts one part in 4 s and scraps the next after 2 s more, three times. Behind three cuts a part takes 7 s with its burr, so
    // none gets through any more; the tool has made no fourth cut.
    const body = cell(jam).replace('cycles: 5', 'cycles: 1000');
    const { counts } = ran(small('200 s', body));
    expect(counts).toMatchObject({ good: 3, deburred: 0 });
    expect(counts.scrapped).toBeGreaterThan(10);
  });
});
