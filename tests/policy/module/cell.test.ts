import { expect, it } from 'vitest';
import { gaugedCell, small } from '../../line/small-line.ts';
import { asks, changes, nameless } from './out-of-reach.ts';
import { ranWith } from './run-code.ts';

// A list to be changed knowingly: whatever is added here is something a policy written as code may see or do.
it('a policy as code has these and no others', () => {
  let keys: string[] = [];
  ranWith(small('10 s', gaugedCell()), (cell) => {
    keys = Object.keys(cell);
  });
  expect(keys.sort()).toEqual([
    ...['adjust', 'after', 'drawn', 'expedite', 'fix', 'gain', 'hold', 'now', 'onMarkedReading', 'onOrder'],
    ...['onReading', 'onSight', 'random', 'release', 'respond', 'switching', 'times', 'when'],
  ]);
});

it('true values are out of reach of the types of a policy as code, and of the policy itself', () => {
  expect(nameless.name).toBeUndefined();
  const scenario = small('100 s', gaugedCell());
  for (const wrong of [asks, changes]) {
    const run = () =>
      ranWith(scenario, (cell) =>
        cell.onMarkedReading('rim', 'heater', (reading) => void wrong(cell, reading)),
      );
    expect(run).toThrow();
  }
});
