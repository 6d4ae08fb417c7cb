import type { Command } from './command.ts';
import { check } from './commands/check.ts';
import { classroom } from './commands/classroom.ts';
import { compare } from './commands/compare.ts';
import { cross } from './commands/cross.ts';
import { explain } from './commands/explain.ts';
import { rerun } from './commands/rerun.ts';
import { run } from './commands/run.ts';
import { size } from './commands/size.ts';
import { trace } from './commands/trace.ts';
import { vary } from './commands/vary.ts';
import { watch } from './commands/watch.ts';

/** In the order in which help lists them. */
export const COMMANDS: readonly Command[] = [
  compare,
  cross,
  vary,
  size,
  run,
  check,
  explain,
  trace,
  watch,
  classroom,
  rerun,
];
