import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { ran, seconds, small } from '../line/small-line.ts';

/** Three machines that break down at 10, 11 and 12 s, for 5 s of repair by one fitter; one blank is left from 0 s on. */
const line = (call: string, { stock = 'on-hand: 4', second = 5, crew = '', more = '' } = {}) => `
stock:
  blank: { ${stock} }
stations:
${['a', 'b', 'c']
  .map(
    (name, i) =>
      `  ${name}: { does: work, takes: blank, cycle: 99 s, to: good, breakdowns: { jam: { every: ${10 + i} s, counted: clock, repair: ${i === 1 ? second : 5} s, cycle: resumes, crew: fitter } } }`,
  )
  .join('\n')}
crew:
  fitter: { number: 1${crew} }
${more}
policies:
  carry on: []
  help: [{ do: call-crew, crew: fitter, ${call}, when: { stock: blank, below: 5 } }]`;

const run = (text: string) => {
  const outcome = ran(small('24 s', text), 'help');
  return {
    waits: ['a', 'b', 'c'].map((name) => seconds(outcome, name, 24).awaiting_technician ?? 0),
    called: Math.round(outcome.did!.called_fitter_h! * 3600 * 1e6) / 1e6,
    busy: outcome.crewBusyShares.fitter,
  };
};

describe('call-crew', () => {
  it('has more of them while it is in force, at a cost in hours', () => {
    // Alone: 10, 15 and 20 s. With one more: a at 10, b at 11, c at 15 s; with two nobody waits.
    expect(run(line('by: 1'))).toEqual({ waits: [0, 0, 3], called: 24, busy: 15 / 48 });
    expect(run(line('by: 2'))).toEqual({ waits: [0, 0, 0], called: 48, busy: 15 / 72 });
    expect(ran(small('24 s', line('by: 2'))).did).toBeUndefined();
    expect(seconds(ran(small('24 s', line('by: 2'))), 'c', 24).awaiting_technician).toBe(8);
  });

  it('has them only after the time they take to come', () => {
    // There from 13 s on: b and c from then on, or b alone and c from 15 s on.
    expect(run(line('by: 2, comes-after: 13 s'))).toEqual({ waits: [0, 2, 1], called: 22, busy: 15 / 46 });
    expect(run(line('by: 1, comes-after: 13 s'))).toEqual({ waits: [0, 2, 3], called: 11, busy: 15 / 35 });
  });

  it('lets them go when it ends, once what they do is done', () => {
    // Called for b at 11 s and let go at 11.5 s, when blanks come: there until 13 s, and not for c.
    const stock = 'on-hand: 4, reorder-at: 1, order: 20, lead-time: 11.5 s';
    expect(run(line('by: 1', { stock, second: 2 }))).toEqual({ waits: [0, 0, 3], called: 13, busy: 12 / 37 });
  });

  it('lets nobody come for whom it ended before', () => {
    const stock = 'on-hand: 4, reorder-at: 1, order: 20, lead-time: 11.5 s';
    expect(run(line('by: 1, comes-after: 13 s', { stock }))).toMatchObject({ waits: [0, 4, 8], called: 0 });
  });

  it('has them in the shifts of the crew alone', () => {
    const hours = {
      crew: ', calendar: day',
      more: 'calendars: { day: { shifts: [{ days: [mon], begins: 0 s, lasts: 16 s }] } }',
    };
    const text = line('by: 1', hours);
    // a at 10 s, b at 11 s and none at 15 s but a's fitter, for c: done after the shift, by one of the crew itself.
    expect(run(text)).toMatchObject({ waits: [0, 0, 3], called: 16 });
  });

  it('begins at the first station', () => {
    const line2 = prepare(small('24 s', line('by: 1', { crew: ', move: 2 s' })), 'help', 1);
    line2.calendar.run(24);
    // One goes to a, which is where all begin; the other takes 2 s to b.
    const { seconds: spent } = line2.stations.get('b')!.machines[0]!;
    expect(spent.reduce((sum, each) => sum + each, 0)).toBeGreaterThan(0);
    const outcome = ran(small('24 s', line('by: 1', { crew: ', move: 2 s' })), 'help');
    expect(seconds(outcome, 'b', 24).awaiting_technician).toBe(2);
  });
});
