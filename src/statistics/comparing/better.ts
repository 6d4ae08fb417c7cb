/** Which of two values of a measure is the better one. */
export type Better = 'higher' | 'lower';

/** What a value is multiplied by so that more is better. */
export const signOf = (better: Better): 1 | -1 => (better === 'higher' ? 1 : -1);
