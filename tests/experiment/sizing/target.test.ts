import { describe, expect, it } from 'vitest';
import { middleOf, targetOf } from '../../../src/experiment/sizing/target.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { outcome } from '../../report/fake.ts';

const scenario = parseScenario(
  `mendline: 1
title: a line
about: made up
run: { warm-up: 0 s, length: 1 h, seeds: 2 }
stock: { blank: { unlimited: true }, frame: { on-hand: 9 } }
stations:
  first: { does: work, takes: blank, cycle: 1 min, to: second }
  second: { does: assemble, buffer: 1, takes: [frame], cycle: 1 min, fits: [], misfit: scrap, to: good }
policies: { carry on: [] }
`,
  'line',
);

describe('a target', () => {
  it.each([
    ['throughput', '480 /h', 480],
    ['throughput', '8 /min', 480],
    ['lead time', '2 min', 120],
    ['scrap rate', '2 %', 0.02],
    ['work_in_progress_parts', '12', 12],
    ['stock cost per good', '0.3', 0.3],
  ])('%s %s is in the unit of the key', (measure, written, value) => {
    expect(targetOf({ measure, atLeast: written }, scenario).value).toBeCloseTo(value, 12);
  });

  it('is to be met by one in a hundred unless it says otherwise, and is judged in the middle', () => {
    const above = targetOf({ measure: 'throughput', atLeast: '50 /h' }, scenario);
    expect([above.worth, above.better, middleOf(above)]).toEqual([0.5, 'higher', 50.25]);
    const below = targetOf({ measure: 'lead time', atMost: '2 min', worth: '20 s' }, scenario);
    expect([below.worth, below.better, middleOf(below)]).toEqual([20, 'lower', 110]);
  });

  it('may be the fill rate of a stock', () => {
    const { of } = targetOf({ measure: 'fill rate', stock: 'frame', atLeast: '90 %' }, scenario);
    expect(of({ ...outcome('carry on', 1), stocks: { frame: { fill_rate: 0.87 } as never } })).toBe(0.87);
    expect(of(outcome('carry on', 1))).toBeNull();
  });

  it.each([
    [{ measure: 'thruput', atLeast: '5 /h' }, '"thruput" is no measure; did you mean "throughput"?'],
    [{ measure: 'throughput', atLeast: '5' }, '"5" for throughput: expected a rate, such as 480 /h'],
    [{ measure: 'fit rate', atLeast: '0.9' }, '"0.9" for fit rate: expected a share, such as 95 %'],
    [{ measure: 'lead time', atMost: '-2 min' }, '"-2 min" for lead time: expected a time, such as 30 min'],
    [{ measure: 'scrap rate', atMost: '0 %' }, 'scrap rate: expected "worth"'],
    [{ measure: 'fill rate', atLeast: '90 %' }, 'name it, such as "stock: frame"'],
    [{ measure: 'fill rate', stock: 'blank', atLeast: '90 %' }, '"blank" is no stock that can run out'],
    [{ measure: 'throughput', stock: 'frame', atLeast: '5 /h' }, '"stock" belongs to "fill rate"'],
  ])('%j is refused', (spec, message) => {
    expect(() => targetOf(spec, scenario)).toThrow(message);
  });
});
