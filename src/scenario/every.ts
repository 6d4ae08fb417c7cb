import { meanOf } from '../kernel/distributions/index.ts';
import { time } from './laws.ts';

/** The time from one of something to the next; never zero for ever, which would be endlessly many at one instant. */
export const every = time.refine((law) => meanOf(law) > 0, {
  error: 'the time from one to the next must be above zero',
});

/** Whether that time runs only while the station works, or always. */
export const COUNTED = ['working', 'clock'] as const;
