import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { someOfUsual } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** A station works slower, or parts arrive more often. */
export const speed = entry({
  disturbs: z.literal('speed'),
  station: name.describe(
    'the station that works at another speed; where parts arrive, they come so much faster',
  ),
  to: someOfUsual.describe('its speed, in % of what it is otherwise, from the next cycle on'),
  ...building,
  ...timing,
}).superRefine(comes);
