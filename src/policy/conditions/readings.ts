import { Level } from '../../line/level.ts';
import type { ReadingCondition } from '../../scenario/conditions/readings.ts';
import type { Told, View } from './view.ts';

/** Holds while the newest mean of so many readings lies beyond its bounds; not before there is one. */
export function meetReadings(condition: ReadingCondition, { controls }: View, { holds }: Told): void {
  const { at, of, meanOf } = condition;
  const nothingYet = 'above' in condition ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  // Whoever reads is not done yet, so it is told by way of the calendar.
  const level = new Level(condition, nothingYet, (now) => controls.after(0, () => holds(now)));
  let sum = 0;
  let summed = 0;
  holds(false);
  controls.onReadingAt(at, of, (value) => {
    sum += value;
    if (++summed < meanOf) return;
    const mean = sum / meanOf;
    sum = 0;
    summed = 0;
    if (level.isCrossed(mean)) level.cross();
  });
}
