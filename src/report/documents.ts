import { FORMAT as COMPARISON } from './json.ts';
import { SELECTION_FORMAT } from './selection/selection-json.ts';

/** A kind of output that records how it was made, so that `rerun` can make it again. */
export interface DocumentKind {
  readonly format: string;
  /** The command that makes such outputs. */
  readonly command: string;
  /** What the command calls it in its folder; null where it is called as one likes. */
  readonly file: string | null;
  /** Whether the command is told a folder or the file itself, or prints. */
  readonly goesTo: 'folder' | 'file' | 'output';
  /** Whether the command may be told how many workers do it. */
  readonly workers?: boolean;
}

export const CROSSED_FORMAT = 'mendline crossed experiment 1';
export const VARIED_FORMAT = 'mendline varied experiment 1';

export const SIZING_FORMAT = 'mendline sizing 1';

export const EVENTS_FORMAT = 'mendline events 1';
export const TRACE_FORMAT = 'mendline trace 1';
export const PLAYBACK_FORMAT = 'mendline playback 1';
export const CLASS_FORMAT = 'mendline class page 1';

const inFolder = (file: string, format: string, command: string, workers: boolean): DocumentKind => ({
  ...{ format, command, file, goesTo: 'folder', workers },
});

export const DOCUMENTS: readonly DocumentKind[] = [
  inFolder('comparison.json', COMPARISON, 'compare', true),
  inFolder('selection.json', SELECTION_FORMAT, 'compare', true),
  inFolder('cross.json', CROSSED_FORMAT, 'cross', true),
  inFolder('vary.json', VARIED_FORMAT, 'vary', true),
  inFolder('sizing.json', SIZING_FORMAT, 'size', true),
  inFolder('origin.json', EVENTS_FORMAT, 'trace', false),
  { format: TRACE_FORMAT, command: 'trace', file: null, goesTo: 'output' },
  { format: COMPARISON, command: 'run', file: null, goesTo: 'output', workers: true },
  { format: PLAYBACK_FORMAT, command: 'watch', file: null, goesTo: 'file' },
  { format: CLASS_FORMAT, command: 'classroom', file: null, goesTo: 'file' },
];

/** Those that a folder may hold by a name of their own. */
export const NAMED: readonly string[] = DOCUMENTS.flatMap(({ file }) => file ?? []);
