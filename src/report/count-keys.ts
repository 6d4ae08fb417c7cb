import type { Outcome } from '../line/outcome.ts';

type Count = keyof Outcome['counts'];

/** The key of each count in data files, in their order. */
const KEYS: Readonly<Record<Count, string>> = {
  started: 'started',
  good: 'good',
  scrapped: 'scrapped',
  turnedAway: 'turned_away',
  reworked: 'reworked',
  firstAttempts: 'first_attempts',
  firstFits: 'first_fits',
  tight: 'tight',
  loose: 'loose',
  unread: 'unread',
};

export const COUNT_KEYS = Object.entries(KEYS) as readonly [Count, string][];
