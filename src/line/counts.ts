/** What a run counts, in the order of data files: each is a field of `Tally`. */
export const COUNTS = [
  'started',
  'good',
  'scrapped',
  /** Arrivals that found no room. */
  'turnedAway',
  /** Parts formed too cold, too hot, or with too thin a wall. */
  'incomplete',
  'webbed',
  'thin',
  'reworked',
  'deburred',
  /** Parts scrapped by a rework station that could not bring them in. */
  'hopeless',
  'firstAttempts',
  'firstFits',
  'tight',
  'loose',
  /** Attempts that were pressed together: sound, and spoiled by it. */
  'forced',
  'damaged',
  'unread',
  /** Parts sent to be marked anew, each time. */
  'reMarked',
  /** By an acceptance plan. */
  'lotsAccepted',
  'lotsRejected',
  /** Parts started from what stands in for their stock, and assemblies made with what stands in for a mate. */
  'substituted',
  /** Parts put aside without one of their mates. */
  'setAside',
  /** Spares taken out of a machine for another. */
  'cannibalised',
] as const;

export type Count = (typeof COUNTS)[number];
