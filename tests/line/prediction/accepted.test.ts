import { expect, it } from 'vitest';
import { acceptedReadings } from '../../../src/line/prediction/accepted.ts';
import { cell } from './cell.ts';

const accepted = (limits: { lower: number; upper: number }, measure: string) => {
  const gauge = cell({
    rim: 'tolerance: 1 mm',
    measures: `rim: { repeatability: 0 mm, ${measure} }`,
  }).stations.find(({ does }) => does === 'gauge');
  return gauge?.does === 'gauge' ? acceptedReadings(limits, gauge.measures[0]!) : null;
};

// Worked by hand. In steps of 0.1 mm, readings from 9.7 to 10.3 are within 9.65 and 10.32: those rounded from 9.65 to 10.35.
it.each([
  ['bias: 0 mm', { lower: 9.65, upper: 10.32 }, { lower: 9.65, upper: 10.32 }],
  ['guard: 0.05 mm', { lower: 9.65, upper: 10.32 }, { lower: 9.7, upper: 10.27 }],
  ['resolution: 0.1 mm', { lower: 9.65, upper: 10.32 }, { lower: 9.65, upper: 10.35 }],
  ['resolution: 0.1 mm', { lower: 9.7, upper: 10.3 }, { lower: 9.65, upper: 10.35 }],
  ['resolution: 0.1 mm, guard: 0.05 mm', { lower: 9.7, upper: 10.3 }, { lower: 9.75, upper: 10.25 }],
])('with %s', (measure, limits, { lower, upper }) => {
  const found = accepted(limits, measure)!;
  expect(found.lower).toBeCloseTo(lower, 9);
  expect(found.upper).toBeCloseTo(upper, 9);
});

it('where no step lies within the limits, none', () => {
  const { lower, upper } = accepted({ lower: 9.96, upper: 9.99 }, 'resolution: 0.5 mm')!;
  expect(upper).toBe(lower);
});
