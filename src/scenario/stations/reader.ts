import { z } from 'zod';
import { duration, entry, share, word } from '../fields.ts';

/** Reads marks in front of a station. */
export const reader = entry({
  reads: share.describe('chance that a mark that took is read'),
  unread: z
    .union([
      entry({ 'by-hand': duration.describe('time to identify the part by hand') }),
      word(['pass', 'scrap']),
    ])
    .describe(
      'what happens to a part whose mark is not read: pass on anonymously, scrap, or identify by hand',
    ),
});

export type ReaderSpec = z.output<typeof reader>;
