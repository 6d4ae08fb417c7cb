/** Every run is kept in memory until the comparison is made. */
export const MOST_SEEDS = 10_000;

/** Beyond this no line goes, and an array of as many entries still fits into memory. */
export const MOST_COUNTED = 1_000_000;

/** At one station; each is kept and drawn for by itself. */
export const MOST_MACHINES = 1000;
