import { type Command, SCENARIO } from '../command.ts';
import { joined, json, modules, policy, seeds, workers } from '../options.ts';

export const run: Command = {
  name: 'run',
  describe: 'run one policy',
  takes: SCENARIO,
  options: { ...joined, policy, seeds, workers, json, ...modules },
  example: ['run scenarios/tray-cell.yaml --policy "retune forming"', 'one policy of the demo'],
  run: async (given) => (await import('../run.ts')).runCommand(given),
};
