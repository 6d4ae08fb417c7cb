import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { whileHolds } from '../in-force.ts';
import { yesNo } from '../yes-no.ts';

export const skip = entry({
  do: z.literal('skip'),
  station: name.describe('a working, marking or gauging station that parts go past meanwhile'),
  later: yesNo.describe(
    'whether parts that went past are done in the end: collected before they leave as good and sent through the station once this is over',
  ),
  ...whileHolds,
});
