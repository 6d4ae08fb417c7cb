import { type Command, SCENARIO } from '../command.ts';
import {
  count,
  flag,
  joined,
  json,
  modules,
  only,
  out,
  resume,
  seeds,
  several,
  word,
  workers,
} from '../options.ts';

const also = several('files to write besides: parquet, latex, markdown, svg, with commas between');
const noTwins = flag('leave out the same runs without disturbances');
const judging = {
  worth: several('what a difference must exceed to be worth having: "0.5 /h" or "scrap rate=0.5 %"'),
  pairs: flag('print the comparison of every pair of policies, too'),
  target: several('what a run should reach, such as "throughput 480 /h": how often each policy does'),
};
const stopping = {
  'until-decided': flag('run until the best policy is chosen, in the measure of --worth'),
  'half-width': word('run until the mean of each policy is known to within this, such as "2 /h"'),
  by: word('measure that decides; else that of --worth'),
  sure: word('probability of a right choice; else 95 %'),
  procedure: word('sequential, or two-stage; else sequential'),
  'at-most': count('runs for each policy after which it ends anyhow; else 500'),
  within: word('time after which it ends anyhow, such as "10 min"; else 1 h'),
};

export const compare: Command = {
  name: 'compare',
  describe: 'run every policy under the same seeds and compare them',
  takes: SCENARIO,
  options: {
    ...joined,
    ...{ only, seeds, ...judging, workers, json, out, also, resume, 'no-twins': noTwins },
    ...stopping,
    ...modules,
  },
  example: ['compare scenarios/tray-cell.yaml --seeds 10', 'a quick look at the demo'],
  run: async (given) => (await import('../compare.ts')).compareCommand(given),
};
