import { z } from 'zod';
import { duration } from './fields.ts';

const BY_PILOT = 'by-pilot';

/** How long a line runs before anything is counted, as written. */
export const warmUp = z
  .union([z.enum(['none', BY_PILOT]), duration])
  .describe(
    'time that passes before anything is counted; or none, for runs whose start belongs to them; or by-pilot, which finds it by pilot runs',
  );

/** How the warm-up was chosen. */
export type WarmUpBy = 'given' | 'none' | 'pilot';

/** Its length in s, 0 until a pilot has told, and how it was chosen. */
export function warmUpOf(written: z.output<typeof warmUp>): { warmUp: number; warmUpBy: WarmUpBy } {
  if (written === BY_PILOT) return { warmUp: 0, warmUpBy: 'pilot' };
  if (written === 'none' || written === 0) return { warmUp: 0, warmUpBy: 'none' };
  return { warmUp: written, warmUpBy: 'given' };
}
