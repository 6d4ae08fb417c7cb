import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { count, entry, featureOrMates, length, name, word } from '../fields.ts';
import { forcing } from './forcing.ts';
import { operating } from './operating.ts';
import { reader } from './reader.ts';

export const assemble = entry({
  does: z.literal('assemble'),
  ...operating,
  buffer,
  takes: z
    .array(name, { error: 'expected a list of stocks' })
    .min(1, { error: 'expected at least one stock' }),
  'without-mates': word(['wait', 'scrap'])
    .default('wait')
    .describe('what happens to a part when mates have run out'),
  fits: z
    .array(
      entry({
        hole: featureOrMates.describe('the outer feature: one of the part, or MATE.FEATURE'),
        shaft: featureOrMates.describe('the inner feature: one of the part, or MATE.FEATURE'),
        least: length
          .optional()
          .describe(
            'least clearance, hole minus shaft; negative allows interference; without both, as the classes say',
          ),
        most: length.optional().describe('most clearance'),
      })
        .refine(({ least, most }) => (least === undefined) === (most === undefined), {
          error: 'give both "least" and "most", or neither where both sides have a class',
        })
        .refine(({ least, most }) => least === undefined || most === undefined || least < most, {
          error: '"least" must lie below "most"',
        }),
      { error: 'expected a list of mating pairs' },
    )
    .describe('mating pairs; the worst decides'),
  misfit: name.describe('a part that does not fit goes to: scrap, or a rework station'),
  tight: name.optional().describe('the same of one that is too tight; left out, as any misfit'),
  loose: name.optional().describe('the same of one that is too loose; left out, as any misfit'),
  forcing: forcing.optional().describe('presses together what is too tight, if it is nowhere too loose'),
  'mate-tries': count(1).default(1).describe('attempts before a mate that does not fit is thrown away'),
  reader: reader.optional(),
});
