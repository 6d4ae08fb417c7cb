import type { z } from 'zod';
import { count, entry, name } from './fields.ts';

const low = entry({
  stock: name.describe('a limited stock'),
  below: count(1).describe('it begins when fewer pieces than this are on hand'),
  until: count(1).optional().describe('it ends when at least so many are; left out, as many as "below" says'),
})
  .refine(({ below, until }) => until === undefined || until >= below, {
    error: '"until" must not lie under "below": it ends when so many pieces are on hand again',
    path: ['until'],
  })
  .transform(({ stock, below, until }) => ({ stock, below, until: until ?? below }));

/** When a response is in force: from what begins it until what ends it. What it goes by is told by its key. */
export const condition = low;

export type ConditionSpec = z.output<typeof condition>;
