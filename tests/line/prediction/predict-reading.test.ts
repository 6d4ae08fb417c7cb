import { expect, it } from 'vitest';
import { predictUnread } from '../../../src/line/prediction/predict-reading.ts';
import type { SpecOf } from '../../../src/scenario/stations.ts';
import { cell } from './cell.ts';

// Independent chances: 0.8 of the marks take, 0.9 of these are read; 1 - 0.72.
it('a mark is not read that did not take or that the reader misses', () => {
  const scenario = cell({ takesHold: '80 %' });
  const { reader } = scenario.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
  expect(predictUnread(reader!, scenario)).toBeCloseTo(0.28, 12);
});
