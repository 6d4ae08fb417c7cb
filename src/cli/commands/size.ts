import { type Command, SCENARIO } from '../command.ts';
import { count, flag, joined, json, modules, out, resume, word, workers } from '../options.ts';

const sizing = {
  sizing: word('name of the sizing; else the first'),
  seeds: count('runs that each choice of sizes gets at first; else 10'),
  choices: count('the most choices that a search looks at; else 150'),
  whole: flag('simulate every choice of sizes instead of searching'),
  'at-most': count('runs in all; else 20000'),
  within: word('time in all, such as "1 h"; else 10 min'),
};

export const size: Command = {
  name: 'size',
  describe: 'find how much buffer, crew or stock is enough, at least cost',
  takes: SCENARIO,
  options: { ...joined, ...sizing, workers, json, out, resume, ...modules },
  example: ['size scenarios/lid-line.yaml', 'the cheapest that makes enough lids'],
  run: async (given) => (await import('../size.ts')).sizeCommand(given),
};
