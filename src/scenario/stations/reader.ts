import { z } from 'zod';
import { unreadableChance } from '../../standards/data-matrix.ts';
import { count, duration, entry, name, word } from '../fields.ts';
import { type ByGrade, shareByGrade, symbol } from '../grades.ts';

/** More attempts at one mark than anybody makes. */
const MOST_TRIES = 20;

/** What becomes of a part whose mark is not read. */
interface UnreadSpec {
  /** Time to identify it by hand, s; null where nobody does. */
  readonly byHand: number | null;
  /** The station that marks it anew, and how often one part may be sent there from here; null where none does. */
  readonly reMark: { readonly station: string; readonly limit: number } | null;
  /** Whether it is scrapped, else it goes on. */
  readonly scraps: boolean;
}

const done = entry({
  'by-hand': duration.optional().describe('time to identify the part by hand'),
  're-mark': name
    .optional()
    .describe(
      'the station that marks the part anew; without an unlimited buffer there, the two may wait for each other',
    ),
  limit: count(1)
    .optional()
    .describe('how often one part is sent from here to be marked anew; left out, once'),
  afterwards: word(['pass', 'scrap'])
    .optional()
    .describe('what happens when it has been marked anew so often; left out, it passes on anonymously'),
}).transform(({ byHand, reMark, limit, afterwards }, context): UnreadSpec => {
  const refuse = (message: string, path: string[] = []) => {
    context.addIssue({ code: 'custom', message, path });
    return z.NEVER;
  };
  if ((byHand === undefined) === (reMark === undefined))
    return refuse('expected exactly one of "by-hand" (such as 12 s) and "re-mark" (a marking station)');
  if (reMark !== undefined)
    return { byHand: null, reMark: { station: reMark, limit: limit ?? 1 }, scraps: afterwards === 'scrap' };
  for (const [key, given] of Object.entries({ limit, afterwards })) {
    if (given !== undefined) return refuse(`"${key}" goes with "re-mark"; take it out`, [key]);
  }
  return { byHand: byHand!, reMark: null, scraps: false };
});

const unread = z.union([
  done,
  word(['pass', 'scrap'], ['{ by-hand: 12 s }', '{ re-mark: STATION }']).transform(
    (given): UnreadSpec => ({ byHand: null, reMark: null, scraps: given === 'scrap' }),
  ),
]);

/** Reads marks in front of a station. */
export const reader = entry({
  reads: shareByGrade(0)
    .optional()
    .describe('chance that one attempt reads a mark that took; one for all grades or one for each'),
  symbol: symbol
    .optional()
    .describe('instead of the chances: a symbol is read while no more codewords are wrong than it corrects'),
  'wrong-codewords': shareByGrade(1)
    .optional()
    .describe('with a symbol: chance that a codeword is wrong; one for all grades or one for each'),
  tries: count(1, MOST_TRIES).default(1).describe('attempts to read a mark, each independent of the others'),
  retry: duration.default(0).describe('time that each attempt after the first adds'),
  unread: unread.describe(
    'what happens to a part whose mark is not read: pass on anonymously, scrap, identify by hand, or mark anew',
  ),
}).transform(({ reads, symbol, wrongCodewords, ...rest }, context) => {
  const refuse = (message: string, path: string[] = []) => {
    context.addIssue({ code: 'custom', message, path });
    return z.NEVER;
  };
  if (reads === undefined && symbol === undefined)
    return refuse('expected "reads" (such as 99.5 %), or "symbol" with "wrong-codewords"');
  if (reads !== undefined && symbol !== undefined)
    return refuse('"symbol" decides what is read; take out "reads" or "symbol"', ['reads']);
  if (symbol === undefined) {
    if (wrongCodewords !== undefined)
      return refuse('"wrong-codewords" goes with "symbol"; take it out', ['wrong-codewords']);
    return { ...rest, chances: reads! };
  }
  if (wrongCodewords === undefined)
    return refuse('"symbol" needs "wrong-codewords", such as 5 %', ['symbol']);
  const chances: ByGrade = wrongCodewords.map((wrong) => 1 - unreadableChance(symbol, wrong));
  return { ...rest, chances };
});

export type ReaderSpec = z.output<typeof reader>;
