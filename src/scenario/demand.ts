import type { z } from 'zod';
import { every } from './every.ts';
import { count, duration, entry } from './fields.ts';

/** Orders for good assemblies, served from finished goods, first come first served. */
export const demand = entry({
  every: every.describe('time from one order to the next'),
  pieces: count(1).default(1).describe('good assemblies that one order wants'),
  'due-after': duration.describe('from the order to when it is due'),
  'finished-goods': entry({
    'at-start': count(0).default(0).describe('good assemblies in stock at the start'),
    most: count(1).describe('room for good assemblies; when it is full, the line is blocked'),
  }),
}).superRefine(({ pieces, finishedGoods: { atStart, most } }, context) => {
  const say = (message: string, ...path: string[]) => context.addIssue({ code: 'custom', message, path });
  if (pieces > most)
    say(
      `an order of ${pieces} can never be served from at most ${most} finished goods; raise "most"`,
      'pieces',
    );
  if (atStart > most) say(`"at-start" is more than there is room for, ${most}`, 'finished-goods', 'at-start');
});

export type DemandSpec = z.output<typeof demand>;
