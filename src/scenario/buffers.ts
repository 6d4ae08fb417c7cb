import { z } from 'zod';
import { count, duration, entry, positiveDuration, word } from './fields.ts';
import { MOST_COUNTED } from './limits.ts';
import { secondsText } from './units.ts';

/** What holds the parts in front of a station. */
export interface BufferSpec {
  /** Infinity when unlimited. */
  readonly places: number;
  /** Seconds from entering to the far end; above zero on a conveyor. */
  readonly transit: number;
  /** Least seconds between two parts that enter. */
  readonly spacing: number;
}

const conveyor = entry({
  places: count(1).describe('the most parts it carries'),
  transit: positiveDuration.describe('time from one end to the other'),
  spacing: duration.default(0).describe('least time between two parts that enter'),
}).superRefine(({ places, transit, spacing }, context) => {
  const needs = (places - 1) * spacing;
  if (needs <= transit * (1 + 1e-9)) return;
  context.addIssue({
    code: 'custom',
    message:
      `${places} parts that enter ${secondsText(spacing)} apart take ${secondsText(needs)}, but the first leaves after ` +
      `${secondsText(transit)}; lower "places" or "spacing", or lengthen "transit"`,
    path: ['spacing'],
  });
});

const PLACES = `expected a whole number of places up to ${MOST_COUNTED}, or unlimited, or { places, transit, spacing } for a conveyor`;
const still = (places: number): BufferSpec => ({ places, transit: 0, spacing: 0 });

export const buffer = z
  .union([
    conveyor.transform((belt): BufferSpec => belt),
    z.union([
      word(['unlimited']).transform(() => still(Number.POSITIVE_INFINITY)),
      z
        .int({ error: PLACES })
        .min(0, { error: PLACES })
        .max(MOST_COUNTED, { error: PLACES })
        .transform(still),
    ]),
  ])
  .describe('places for parts waiting in front of the station; a mapping is a conveyor');
