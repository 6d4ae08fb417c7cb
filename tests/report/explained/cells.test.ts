import { expect, it } from 'vitest';
import type { Compared } from '../../../src/experiment/judge.ts';
import { explainedCells } from '../../../src/report/explained/cells.ts';

const of = (
  predicted: number,
  value: number,
  lower: number | null,
  upper: number | null,
  differs: boolean | null = false,
): Compared => ({
  predicted,
  simulated: { value, lower, upper, level: 0.95, runs: 3, method: 't' },
  differs,
});

it('as many decimals as the interval is sure of', () => {
  expect(explainedCells('mean', of(120.00007, 119.9981, 119.9868, 120.0095))).toEqual({
    label: 'mean',
    predicted: '120.000',
    simulated: '119.998',
    interval: '119.987 to 120.010',
    mark: '',
  });
  expect(explainedCells('share', of(0.41, 0.4, 0.35, 0.45), 100)).toMatchObject({
    predicted: '41',
    interval: '35 to 45',
  });
});

it('and as many as show something of a small prediction, within reason', () => {
  expect(explainedCells('share', of(0.00003, 0, 0, 0.002), 100).predicted).toBe('0.003');
  expect(explainedCells('share', of(1e-9, 0, 0, 0.002), 100).predicted).toBe('0.0000');
});

it('without an interval, three decimals', () => {
  expect(explainedCells('mean', of(12, 12.3456, null, null, null))).toMatchObject({
    simulated: '12.346',
    interval: 'no interval',
    mark: '',
  });
  expect(explainedCells('mean', { predicted: 12, simulated: null, differs: null })).toMatchObject({
    predicted: '12.000',
    simulated: 'none',
    interval: 'no interval',
  });
});

it('an asterisk where the two differ', () => {
  expect(explainedCells('mean', of(12, 13, 12.5, 13.5, true)).mark).toBe('*');
});
