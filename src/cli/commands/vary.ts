import { type Command, SCENARIO } from '../command.ts';
import { by, count, joined, json, modules, out, resume, several, word, workers } from '../options.ts';

const seeds = count('runs at each setting; else what the scenario says');
const varying = {
  over: several('place in FILE and its values, such as stations/trimming/buffer=8,16,24'),
  design: word('which settings are run: all, fraction, latin or screen; else all'),
  points: count('settings of a fraction or a Latin hypercube'),
  paths: count('paths of a screening; else 10'),
  policy: several('policy to follow, several to vary it as well; else the first'),
};

export const vary: Command = {
  name: 'vary',
  describe: 'run the line with other values than those written and say what they do',
  takes: SCENARIO,
  options: { ...joined, ...varying, by, ...{ seeds, workers, json, out, resume }, ...modules },
  example: [
    'vary scenarios/two-stations.yaml --over "stations/second/buffer=1,4,9"',
    'what more room is worth',
  ],
  run: async (given) => (await import('../vary.ts')).varyCommand(given),
};
