import { lengthPerTwo } from './fields.ts';

const EXAMPLE = '0.07 mm/m/°C';

/** By what share of its length something grows per °C. */
export const expansion = lengthPerTwo(EXAMPLE)
  .refine(({ per }) => [...per].sort().join() === 'length,temperature', {
    error: `expected a length per length and temperature, such as ${EXAMPLE}`,
    abort: true,
  })
  .refine(({ value }) => value > 0, { error: 'what is warmer is longer, so expected more than zero' })
  .transform(({ value }) => value);
