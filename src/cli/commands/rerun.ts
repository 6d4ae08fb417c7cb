import type { Command } from '../command.ts';
import { word, workers } from '../options.ts';

export const rerun: Command = {
  name: 'rerun',
  describe: 'make an output again from what it records, and compare byte for byte',
  takes: {
    name: 'report',
    describe: 'folder of a report, or a file such as a page or comparison.json',
    such: 'a report, such as reports/tray-cell',
  },
  options: { workers, out: word('folder that keeps what is made anew; else it is not kept') },
  example: ['rerun reports/tray-cell', 'whether the shipped report still holds'],
  run: async (given) => (await import('../rerun.ts')).rerunCommand(given),
};
