import { expect, it } from 'vitest';
import { countInBins } from '../../src/line/course.ts';
import { Line } from '../../src/line/line.ts';

it('counts what leaves in the bin at whose end, or before it, it leaves', () => {
  const { good } = new Line(1);
  const counts = countInBins(good, 100, 0.1, 5);
  // Rounding: 100.3 - 100 is a little more than three tenths.
  for (const now of [100, 100.05, 100.1, 100.3, 100.31, 100.5, 100.51, 200])
    for (const tell of good.leaving) tell(0, 0, now);
  expect([...counts]).toEqual([3, 0, 1, 1, 1]);
});
