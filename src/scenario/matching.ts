import { z } from 'zod';
import { count, duration, entry, name, positiveLength, spread, word } from './fields.ts';
import { always } from './in-force.ts';

const classes = entry({
  number: count(2, 1000).describe('how many classes; the outermost take all sizes beyond'),
  width: positiveLength.describe('width of a class; they lie about what each feature should be'),
});

/** How an assembling station chooses among measured parts for the mates in hand. */
export const match = entry({
  do: z.literal('match'),
  at: name.describe('an assembling station'),
  among: count(2)
    .optional()
    .describe('how many of the parts that wait in its buffer are compared with the mate in hand'),
  bank: count(1)
    .optional()
    .describe('instead: places beside its buffer; the oldest waiting parts stand there and are compared'),
  rule: word(['hardest-fit', 'best-margin', 'first-fit', 'classes'])
    .default('hardest-fit')
    .describe(
      'of the parts that promise to fit: the one with the least margin, the one with the most, or the oldest; or the oldest of the same class as the mate',
    ),
  classes: classes.optional().describe('for the rule "classes": selective assembly'),
  guard: spread
    .optional()
    .describe('least margin to the clearance limits that readings must promise; not for the rule "classes"'),
  'mate-repeatability': spread.describe('repeatability of the reading taken of the mate'),
  takes: duration.describe('time that reading and choosing add to the cycle'),
  patience: duration
    .default(0)
    .describe(
      'how long a mate waits for another part while the bank has room and nothing in it promises to fit',
    ),
  ...always,
}).superRefine(({ among, bank, rule, classes, guard, patience }, context) => {
  const say = (at: string, message: string) => context.addIssue({ code: 'custom', message, path: [at] });
  const sorted = rule === 'classes';
  if (among === undefined && bank === undefined)
    say('among', 'give "among" (parts in the buffer) or "bank" (places beside it)');
  if (among !== undefined && bank !== undefined)
    say('bank', 'give either "among" (parts in the buffer) or "bank" (places beside it)');
  if (sorted && classes === undefined)
    say('classes', 'the rule "classes" needs them, such as { number: 3, width: 0.08 mm }');
  if (!sorted && classes !== undefined) say('classes', 'only the rule "classes" goes by classes');
  if (sorted && guard !== undefined) say('guard', 'the rule "classes" goes by classes alone; leave it out');
  if (!sorted && guard === undefined) say('guard', 'expected a length with its unit, such as 0.05 mm');
  if (patience > 0 && bank === undefined)
    say('patience', 'a mate waits for parts to come into a "bank" only');
});

export type MatchSpec = z.output<typeof match>;
