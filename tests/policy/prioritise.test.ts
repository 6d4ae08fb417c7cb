import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from '../line/small-line.ts';

/** Three machines that break down at 10, 11 and 12 s, for 5 s of repair by one fitter. */
const line = (serves: string, ...responses: string[]) => `
stock:
  blank: { on-hand: 9 }
stations:
${['a', 'b', 'c']
  .map(
    (name, i) =>
      `  ${name}: { does: work, takes: blank, cycle: 99 s, to: good, breakdowns: { jam: { every: ${10 + i} s, counted: clock, repair: 5 s, cycle: resumes, crew: fitter${serves === 'priority' ? `, priority: ${i + 1}` : ''} } } }`,
  )
  .join('\n')}
crew:
  fitter: { number: 1, serves: ${serves} }
policies:
  carry on: []
  urgent: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;

const waits = (serves: string, policy: string, ...responses: string[]) => {
  const outcome = ran(small('24 s', line(serves, ...responses)), policy);
  return ['a', 'b', 'c'].map((name) => seconds(outcome, name, 24).awaiting_technician ?? 0);
};
const first = (stations: string, below = 99) =>
  `do: prioritise, crew: fitter, first: [${stations}], when: { stock: blank, below: ${below} }`;

describe('prioritise', () => {
  it.each(['first-come', 'priority', 'nearest'])('comes before the rule %s', (serves) => {
    // Served from 10, 15 and 20 s on.
    expect(waits(serves, 'carry on', first('c'))).toEqual([0, 4, 8]);
    expect(waits(serves, 'urgent', first('c'))).toEqual([0, 9, 3]);
  });

  it('serves those that it names in their order, before all others', () => {
    expect(waits('first-come', 'urgent', first('c, b'))).toEqual([0, 9, 3]);
    expect(waits('first-come', 'urgent', first('b, c'))).toEqual([0, 4, 8]);
    expect(waits('first-come', 'urgent', first('a'))).toEqual([0, 4, 8]);
  });

  it('is as ever while it is not in force', () => {
    expect(waits('first-come', 'urgent', first('c', 1))).toEqual([0, 4, 8]);
  });

  it('twice goes by the later that is in force', () => {
    expect(waits('first-come', 'urgent', first('c'), first('b'))).toEqual([0, 4, 8]);
    expect(waits('first-come', 'urgent', first('c'), first('b', 1))).toEqual([0, 9, 3]);
  });
});
