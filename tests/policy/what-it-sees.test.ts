import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { Controls, type Reading } from '../../src/line/controls.ts';
import { install } from '../../src/policy/responses.ts';
import { gaugedCell, small } from '../line/small-line.ts';

const line = () =>
  prepare(
    small('100 s', gaugedCell({ rim: 'own-sd: 0.5 mm', reading: 'bias: 3 mm, repeatability: 0.2 mm' })),
    'carry on',
    1,
  );

const assembling = `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { nominal: 100.5 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming, own-sd: 0.2 mm, gains: { heater: 0.1 mm/°C } } } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: 10 s
    settings: { heater: { target: 150 °C } }
    to: assembly
  assembly:
    does: assemble
    buffer: 5
    takes: [frame]
    cycle: 5 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.2 mm, most: 0.8 mm }]
    misfit: scrap
    to: good
policies:
  carry on: []
  stop: [{ do: stop-and-fix, station: forming, watch: { at: assembly, sees: misfits, count: 2, of-last: 5 }, takes: 60 s }]
  foresight: [{ do: foresee }]
`;

// A list to be changed knowingly: whatever is added here is something a policy may see or do.
it('a policy reaches the line through these and no others, none of which gives a true value', () => {
  const names = Object.getOwnPropertyNames(Controls.prototype).filter((name) => name !== 'constructor');
  expect(names.sort()).toEqual([
    ...[
      'adjust',
      'after',
      'buildAhead',
      'cannibalise',
      'drawn',
      'expedite',
      'fix',
      'gain',
      'gaugingEvery',
      'happen',
      'hold',
      'matching',
      'now',
      'onBuffer',
      'onCalendar',
      'onDemand',
      'onLevel',
    ],
    ...[
      'onOrder',
      'onReading',
      'onReadingAt',
      'onSight',
      'onState',
      'prioritising',
      'reinforcing',
      'release',
      'rerouting',
      'reserve',
      'retargeting',
      'sampler',
      'sendingRejects',
      'skipping',
      'slowing',
      'substituting',
      'toolChange',
    ],
  ]);
  expect(Object.getPrototypeOf(Controls.prototype)).toBe(Object.prototype);
  // The line itself is private to the object, out of reach at run time too.
  expect(Reflect.ownKeys(new Controls(line()))).toEqual(['name']);
});

it('a reading that a policy is told of is what the gauge says, with its bias, and no more', () => {
  const at = line();
  const seen: Reading[] = [];
  new Controls(at).onReading('rim', 'heater', (reading) => seen.push(reading));
  const truths: number[] = [];
  at.gauges.get('gauging')!.readingListeners.push((feature, _reading, row) => {
    truths.push(at.parts.get(row!, feature.truth));
  });
  at.calendar.run(100);
  expect(seen.length).toBe(9);
  for (const [k, reading] of seen.entries()) {
    expect(Object.keys(reading).sort()).toEqual(['adjustedThen', 'aim', 'value']);
    // Bias 3, repeatability 0.2: six standard deviations leave room for no accident.
    expect(Math.abs(reading.value - truths[k]! - 3)).toBeLessThan(1.2);
    expect(reading.value).not.toBe(truths[k]! + 3);
  }
});

it('a sight tells a policy yes or no', () => {
  const at = line();
  const seen: unknown[] = [];
  new Controls(at).onSight('gauging', 'off-limits', (...told: unknown[]) => seen.push(...told));
  at.calendar.run(100);
  expect(seen).toEqual(Array(9).fill(false));
});

it('the response of a bound gets nothing by the controls, and no policy but the bound is let in to true values', () => {
  const at = line();
  const touched: PropertyKey[] = [];
  const controls = new Proxy(new Controls(at), {
    get: (_, key) => {
      touched.push(key);
      return undefined;
    },
  });
  expect(install({ do: 'foresee' }, controls)).toBeNull();
  expect(touched).toEqual([]);
  const scenario = small('100 s', assembling);
  const operations = (policy: string) =>
    prepare(scenario, policy, 1)
      .stations.get('assembly')!
      .machines.map(({ operation }) => operation.constructor.name);
  expect(operations('carry on')).toEqual(['Assemble']);
  expect(operations('stop')).toEqual(['Assemble']);
  expect(operations('foresight')).toEqual(['Seeing']);
});

it('responses that are alike draw from streams of their own', () => {
  const controls = new Controls(line());
  const law = { distribution: 'uniform', low: 0, high: 1 } as const;
  const [one, other] = [controls.sampler(law, 'the same'), controls.sampler(law, 'the same')];
  expect([one(), one(), one()]).not.toEqual([other(), other(), other()]);
});
