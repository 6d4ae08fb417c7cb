import { FORMAT as COMPARISON } from './json.ts';
import { SELECTION_FORMAT } from './selection/selection-json.ts';

/** A file that holds a report as data and records how it was made, so that `rerun` can make it again. */
interface DocumentKind {
  /** What the command calls it in the folder of the report. */
  readonly file: string;
  readonly format: string;
  /** The command that makes such reports. */
  readonly command: string;
}

export const CROSSED_FORMAT = 'mendline crossed experiment 1';
export const VARIED_FORMAT = 'mendline varied experiment 1';

export const SIZING_FORMAT = 'mendline sizing 1';

export const DOCUMENTS: readonly DocumentKind[] = [
  { file: 'comparison.json', format: COMPARISON, command: 'compare' },
  { file: 'selection.json', format: SELECTION_FORMAT, command: 'compare' },
  { file: 'cross.json', format: CROSSED_FORMAT, command: 'cross' },
  { file: 'vary.json', format: VARIED_FORMAT, command: 'vary' },
  { file: 'sizing.json', format: SIZING_FORMAT, command: 'size' },
];
