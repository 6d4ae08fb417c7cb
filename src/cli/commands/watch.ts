import { type Command, SCENARIO } from '../command.ts';
import { count, joined, modules, policy, seed, word } from '../options.ts';

export const watch: Command = {
  name: 'watch',
  describe: 'write a page that plays one run back',
  takes: SCENARIO,
  options: {
    ...joined,
    policy,
    seed,
    hours: count('hours of the run to play back, from its start; else all of it'),
    out: word('file for the page; else reports/watch/ and the name of FILE'),
    ...modules,
  },
  example: ['watch scenarios/tray-cell.yaml --policy "stop and fix"', 'a day of the demo, to be watched'],
  run: async (given) => (await import('../watch.ts')).watchCommand(given),
};
