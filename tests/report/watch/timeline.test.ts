import { expect, it } from 'vitest';
import { busyShares } from '../../../src/report/watch/timeline.ts';

it('tells which share of a crew was busy in each column of its strip, worked out by hand', () => {
  // Of two, one is sent at 500 ms and done at 2500 ms, the other sent at 2000 ms and still there at the end.
  const crew = {
    ...{ name: 'fitter', number: 2, kinds: [], kind: [0, 1] },
    ...{ sent: [500, 1500], way: [200, 0], took: [1800, null] },
  };
  expect(busyShares(crew, 4000, 4)).toEqual([0.25, 0.5, 0.75, 0.5]);
  // One who has to come is busy, and nobody is so beyond the end of the run.
  expect(busyShares({ ...crew, sent: [3500, 0], took: [9000, null] }, 4000, 2)).toEqual([0, 0.25]);
});
