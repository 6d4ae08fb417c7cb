import { expect, it } from 'vitest';
import { severitiesOf } from '../../src/cli/severities.ts';

it('are in rising order, as many as are named', () => {
  expect(severitiesOf('2, 0,0.5,.25')).toEqual([0, 0.25, 0.5, 2]);
  expect(severitiesOf('1')).toEqual([1]);
  expect(severitiesOf()).toEqual([0, 0.5, 1, 2]);
});

it.each([
  ['', 'leaves a number out'],
  ['0,,1', 'leaves a number out'],
  ['-1,2', '"-1" is no severity'],
  ['0,severe', '"severe" is no severity'],
  ['Infinity', 'is no severity'],
  ['1e3', 'is no severity'],
  ['1001', 'is no severity'],
  ['1.', 'is no severity'],
])('are refused with the remedy: "%s"', (text, told) => {
  expect(() => severitiesOf(text)).toThrow(told);
  expect(() => severitiesOf(text)).toThrow('numbers from 0 to 1000 with commas between, such as 0,0.5,1,2');
});

it('are refused when one is named twice', () => {
  expect(() => severitiesOf('1,0,1.0')).toThrow('--severity names 1 twice; once is enough');
});
