import type { Command } from '../command.ts';
import { word } from '../options.ts';

export const classroom: Command = {
  name: 'classroom',
  describe: 'write a page with the engine inside, on which a class works an exercise',
  takes: {
    name: 'file',
    describe: 'exercise in YAML',
    such: 'an exercise, such as scenarios/exercises/buffer.yaml',
  },
  options: { out: word('file for the page; else reports/classroom/ and the name of FILE') },
  example: ['classroom scenarios/exercises/buffer.yaml', 'one of the exercises that come with it'],
  run: async (given) => (await import('../classroom.ts')).classroomCommand(given),
};
