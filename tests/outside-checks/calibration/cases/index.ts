import type { Calibration } from '../calibration.ts';
import { INTERVALS } from './intervals.ts';
import { LINES } from './lines.ts';
import { SELECTIONS } from './selections.ts';
import { TOGETHER } from './together.ts';

interface Group {
  readonly title: string;
  readonly cases: readonly Calibration[];
}

export const GROUPS: readonly Group[] = [
  { title: 'Intervals of one value', cases: INTERVALS },
  { title: 'Several systems at once', cases: TOGETHER },
  { title: 'Choices of the best', cases: SELECTIONS },
  { title: 'Simulated lines', cases: LINES },
];
