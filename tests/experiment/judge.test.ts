import { expect, it } from 'vitest';
import { Judge } from '../../src/experiment/judge.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';

const of = (values: readonly number[]) => (level: number, comparisons: number) =>
  meanInterval(values, level, comparisons);

it('a prediction differs when the interval that decides does not hold it', () => {
  const judge = new Judge(0.95, 0.99);
  // Mean 10, standard error 1, 3 degrees of freedom: 95 % is 3.182, 99 % of two values together is 7.453 (t tables).
  const values = [8, 10, 10, 12].map((value) => 10 + ((value - 10) * Math.sqrt(3)) / Math.SQRT2);
  const near = judge.compare(16, of(values));
  const far = judge.compare(18, of(values));
  expect(near.simulated!.upper).toBeCloseTo(13.182, 3);
  expect(near.differs).toBeNull();
  judge.settle();
  expect(judge.comparisons).toBe(2);
  expect([near.differs, far.differs]).toEqual([false, true]);
});

it('no verdict without runs or with one, and none over rounding', () => {
  const judge = new Judge(0.95, 0.99);
  const none = judge.compare(1, () => null);
  const one = judge.compare(1, of([5]));
  const rounded = judge.compare(0.1 + 0.2, of([0.3, 0.3]));
  const off = judge.compare(0.301, of([0.3, 0.3]));
  judge.settle();
  expect(none).toEqual({ predicted: 1, simulated: null, differs: null });
  expect(one).toMatchObject({ differs: null });
  expect(rounded.differs).toBe(false);
  expect(off.differs).toBe(true);
});
