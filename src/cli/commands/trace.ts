import { type Command, SCENARIO } from '../command.ts';
import { count, flag, joined, json, modules, policy, seed, word } from '../options.ts';

const tracing = {
  part: count('number of the part to follow; else what the run came to'),
  'true-values': flag('tell, too, what no policy sees'),
  out: word('folder for the event log of the run; else none is written'),
};

export const trace: Command = {
  name: 'trace',
  describe: 'follow one part through one run, or write down all that happened',
  takes: SCENARIO,
  options: { ...joined, policy, seed, ...tracing, json, ...modules },
  example: ['trace scenarios/tray-cell.yaml --seed 1 --part 812', 'from sheet to assembly'],
  run: async (given) => (await import('../trace.ts')).traceCommand(given),
};
