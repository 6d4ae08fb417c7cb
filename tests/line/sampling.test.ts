import { describe, expect, it } from 'vitest';
import { PartTable } from '../../src/line/part-table.ts';
import { ByClock, FirstOfDelivery, OneIn, type Sampling } from '../../src/line/sampling.ts';

/** Whether each of the parts that come at these times (s) is chosen. */
const chosen = (sampling: Sampling, times: readonly number[]) => times.map((now) => sampling.chooses(0, now));

describe('sampling', () => {
  it('takes the last of every so many', () => {
    expect(chosen(new OneIn(3), [1, 2, 3, 4, 5, 6])).toEqual([false, false, true, false, false, true]);
  });

  it('takes the next part after each period of the clock, once, and makes up for none', () => {
    const times = [0, 9.9, 10, 11, 19.9, 20.1, 55, 56, 60];
    expect(chosen(new ByClock(10), times)).toEqual(
      // The one at 55 is the next after 50; the periods that end at 30 and 40 had none.
      [false, false, true, false, false, true, true, false, true],
    );
  });

  it('takes one part a period where the quotient is rounded', () => {
    // 0.1 is not exact in binary: its multiples lie a hair off.
    const period = 0.1;
    const times = Array.from({ length: 1000 }, (_, i) => i * period);
    const taken = chosen(
      new ByClock(period),
      times.flatMap((time) => [time, time]),
    ).filter(Boolean).length;
    expect(taken).toBe(999);
  });

  it('takes the first of each delivery, also where two of them mingle', () => {
    const parts = new PartTable();
    const column = parts.column(-1);
    const sampling = new FirstOfDelivery(parts, column, 2);
    const row = parts.start(0);
    const found = [0, 0, 3, 0, 3, 3, 1, 1, 1].map((delivery) => {
      parts.set(row, column, delivery);
      return sampling.chooses(row);
    });
    expect(found).toEqual([true, true, true, false, true, false, true, true, false]);
  });
});
