import { expect, it } from 'vitest';
import { rollingOf } from '../../src/experiment/rolling.ts';

const run = { warmUp: 3600, warmUpBy: 'given' as const, length: 54_000, seeds: 1 };

it('goes back over a thirtieth of the counted time, in ten bins, unless told otherwise', () => {
  expect(rollingOf(run)).toEqual({ window: 1800, bin: 180, bins: 300 });
  expect(rollingOf({ ...run, rolling: 7200 })).toEqual({ window: 7200, bin: 720, bins: 75 });
});

it('leaves out what makes no whole bin at the end, and loses none to rounding', () => {
  expect(rollingOf({ ...run, rolling: 7000 }).bins).toBe(77);
  for (let length = 1; length < 2000; length++)
    expect(rollingOf({ ...run, length }).bins, `${length}`).toBe(300);
});
