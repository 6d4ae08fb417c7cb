import { type Command, SCENARIO } from '../command.ts';
import { by, joined, json, modules, only, out, resume, seeds, several, word, workers } from '../options.ts';

const crossing = {
  severity: word('how many times as severe, with commas between; else 0,0.5,1,2'),
  case: several('name of a case, or of a disturbance where there are none; else all'),
};

export const cross: Command = {
  name: 'cross',
  describe: 'run every policy in every case of disturbances at several severities',
  takes: SCENARIO,
  options: { ...joined, only, ...crossing, by, seeds, workers, json, out, resume, ...modules },
  example: ['cross scenarios/tray-cell.yaml --seeds 10', 'who is best in which case, and how far'],
  run: async (given) => (await import('../cross.ts')).crossCommand(given),
};
