import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';

export const changeTool = entry({
  do: z.literal('change-tool'),
  station: name.describe('a trimming station whose tools are renewed each time this comes into force'),
  by: name
    .optional()
    .describe(
      'which of its set-ups or maintenance that end with a new tool; each machine does it after its cycle, and counts anew; left out, the only one',
    ),
  ...whileHolds,
});
