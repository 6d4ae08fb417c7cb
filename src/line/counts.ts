/** What a run counts, in the order of data files: each is a field of `Tally`. */
export const COUNTS = [
  'started',
  'good',
  'scrapped',
  /** Arrivals that found no room. */
  'turnedAway',
  'reworked',
  'deburred',
  'firstAttempts',
  'firstFits',
  'tight',
  'loose',
  'unread',
] as const;

export type Count = (typeof COUNTS)[number];
