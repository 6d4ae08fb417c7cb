import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { Controls, type Reading } from '../../src/line/controls.ts';
import { gaugedCell, small } from '../line/small-line.ts';

const line = () =>
  prepare(
    small('100 s', gaugedCell({ rim: 'own-sd: 0.5 mm', reading: 'bias: 3 mm, repeatability: 0.2 mm' })),
    'carry on',
    1,
  );

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

it('responses that are alike draw from streams of their own', () => {
  const controls = new Controls(line());
  const law = { distribution: 'uniform', low: 0, high: 1 } as const;
  const [one, other] = [controls.sampler(law, 'the same'), controls.sampler(law, 'the same')];
  expect([one(), one(), one()]).not.toEqual([other(), other(), other()]);
});
