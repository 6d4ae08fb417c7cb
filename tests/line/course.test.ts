import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { runInBins } from '../../src/line/course.ts';
import { blanks, small } from './small-line.ts';

it('counts what leaves in the bin at whose end, or before it, it leaves', () => {
  const line = prepare(
    small('200 s', blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }')),
    'carry on',
    1,
  );
  line.calendar.run(20);
  // Parts leave at 30, 40, 50, ...: bins end at 45, 70, 95 and 120.
  expect([...runInBins(line, 25, 4, 200)]).toEqual([2, 3, 2, 3]);
  expect(line.calendar.now).toBe(120);
  // 130, 140, 150.
  expect([...runInBins(line, 31, 1, 150)]).toEqual([3]);
  expect(line.calendar.now).toBe(150);
});
