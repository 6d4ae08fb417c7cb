import { type Command, SCENARIO } from '../command.ts';
import { count, json } from '../options.ts';

export const explain: Command = {
  name: 'explain',
  describe: 'predict what dimensions come to, beside what an undisturbed line gives',
  takes: SCENARIO,
  options: { seeds: count('runs to simulate; else 10'), json },
  example: ['explain scenarios/tray-cell.yaml', 'spread, fit and gauging before any comparison'],
  run: async (given) => (await import('../explain.ts')).explainCommand(given),
};
