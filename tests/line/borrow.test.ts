import { expect, it } from 'vitest';
import { ran, seconds, small } from './small-line.ts';

const mode = (every: string, spare: string) =>
  `{ every: ${every}, counted: working, repair: 0 s, cycle: resumes, spare: ${spare} }`;

const machine = (name: string, pump: string, valve: string) => `
  ${name}:
    does: work
    takes: blank
    cycle: 1000 s
    breakdowns:
      pump: ${mode(pump, 'pump')}
      valve: ${mode(valve, 'valve')}
    to: good`;

const LONG = '1 h';

it('what is short of two kinds of spares is gathered at one machine, of which even one that gave its own has the other', () => {
  // At 10 a has the pump of c, which stands. At 20 b has the valve of c, which stands anyway. At 30, when c has a pump but
  // no valve and d wants a pump, d has it from c. At 50 the next pump and a valve come, and c works on.
  const scenario = small(
    '60 s',
    `
stock:
  blank: { unlimited: true }
  pump: { on-hand: 0, reorder-at: 0, up-to: 1, lead-time: 25 s }
  valve: { on-hand: 0, up-to: 1, lead-time: 50 s }
stations:${machine('a', '10 s', LONG)}${machine('b', LONG, '20 s')}${machine('c', LONG, LONG)}${machine('d', '30 s', LONG)}
policies:
  carry on: []
  gather:
    - { do: cannibalise, spare: pump, from: [c] }
    - { do: cannibalise, spare: valve, from: [c] }
`,
  );
  const outcome = ran(scenario, 'gather');
  expect(outcome.counts.cannibalised).toBe(3);
  for (const name of ['a', 'b', 'd']) expect(seconds(outcome, name, 60)).toEqual({ working: 60 });
  expect(seconds(outcome, 'c', 60)).toEqual({ working: 20, awaiting_spare: 40 });
  // Each for itself: a has the pump of 25, which fails at 35, and d that of 50.
  const alone = ran(scenario);
  expect(seconds(alone, 'a', 60)).toEqual({ working: 20, awaiting_spare: 40 });
  expect(seconds(alone, 'd', 60)).toEqual({ working: 40, awaiting_spare: 20 });
});
