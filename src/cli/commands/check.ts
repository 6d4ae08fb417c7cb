import { type Command, SCENARIO } from '../command.ts';
import { joined, json } from '../options.ts';

export const check: Command = {
  name: 'check',
  describe: 'check a scenario and explain it, without running it',
  takes: SCENARIO,
  options: { ...joined, json },
  example: ['check scenarios/tray-cell.yaml', 'the line, its bottleneck, what will disturb it'],
  run: async (given) => (await import('../check.ts')).checkCommand(given),
};
